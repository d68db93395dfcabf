import { LARGEST_FILE } from '../io/largestFile.ts';

/** Hands the content to the browser as a file to keep. */
export function download(name: string, content: BlobPart, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}

/** The file's text, no more of it than tells that it is too large; null where it cannot be read. */
export async function textOf(file: File): Promise<string | null> {
  try {
    return await file.slice(0, 2 * LARGEST_FILE).text();
  } catch {
    return null;
  }
}
