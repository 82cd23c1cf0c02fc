/** The day and time of an instant, in UTC. @param at RFC 3339; null when it is not known */
export function instantText(at: string | null): string {
  if (at === null || !Number.isFinite(Date.parse(at))) return 'at a time that is not known'
  return `${new Date(at).toISOString().slice(0, 16).replace('T', ' ')} UTC`
}
