/** A name as that of a file: small letters, digits and dashes. */
export function fileName(name: string): string {
  const bare = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return bare === '' ? 'head' : bare;
}
