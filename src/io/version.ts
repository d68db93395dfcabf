import { version } from '../../package.json';

/** The version of this program, as every print and file of it says. */
export const PROGRAM_VERSION: string = version;
