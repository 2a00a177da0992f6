/** Bytes in base 64 (RFC 4648). */
export function base64(bytes: Uint8Array): string {
  let text = '';
  // In pieces that an argument list can hold.
  for (let i = 0; i < bytes.length; i += 0x6000) text += btoa(String.fromCharCode(...bytes.subarray(i, i + 0x6000)));
  return text;
}
