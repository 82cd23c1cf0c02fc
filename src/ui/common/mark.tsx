/** Says that what is shown was not moved by a hand: shown wherever such data appears. */
export function Mark({ kind }: { kind: 'generated' | 'simulated' | 'imported' | 'board' }) {
  return <span class="mark">{kind}</span>
}
