/**
 * Text with columns set apart by spaces, as terminals show it, with a tab for each gap. Text that
 * has commas, semicolons or tabs is left as it is: there a space is part of a field (RFC 4180).
 */
export function spacesToTabs(text: string): string {
  const sample = text.slice(0, 4000)
  if (/[;\t]/.test(sample) || /,\s*[-+\d.]/.test(sample)) return text
  const named = /^[^\n]*,/.test(sample)
  return named ? text : text.replace(/^[ ]+|[ ]+$/gm, '').replace(/ +/g, '\t')
}
