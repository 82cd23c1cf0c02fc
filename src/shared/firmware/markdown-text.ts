/** Text of people for a line of Markdown, and for a cell of its tables. */
export function plain(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').replace(/[\\`*_{}[\]<>#|]/g, '\\$&')
}
