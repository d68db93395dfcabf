import { mount } from '../../../src/app/mount.tsx';
import { Broken } from './Broken.tsx';
import { Field } from './Field.tsx';
import { Strict } from './Strict.tsx';

/** What to put on the bench is named after `#`; `#page` is the whole page as it stands. */
const name = window.location.hash.slice(1);
const root = document.getElementById('root');

if (name === 'page') import('../../../src/app/main.tsx');
else if (name === 'read3mf') import('./read3mf.ts');
else if (root && name === 'strict') mount(root, <Strict />);
else if (root && name === 'field') mount(root, <Field />);
else if (root && name.startsWith('broken-')) mount(root, <Broken part={name.slice('broken-'.length)} />);
