/** A random id, 128 bits in hex. `crypto.randomUUID` is missing in insecure contexts; this is not. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
