/** Line pictures on a 24 × 24 field, drawn with the text's colour. */
const PATHS = {
  back: 'M15 4.5 7.5 12l7.5 7.5',
  /* A path drawn by a tip, with the hand at its start. */
  moves: 'M4 18c2-9 6-13 9-9s-3 8-4 4 5-8 11-7M4 18a1.4 1.4 0 1 0 .01 0',
  /* A lantern that answers. */
  try: 'M9 3h6M12 3v3M7 6h10l1.5 5-1.5 6H7l-1.5-6zM9.5 17v2.5h5V17M2 9l1.5 1M22 9l-1.5 1M2.5 15l1.2-.6M21.5 15l-1.2-.6',
  /* Points with their intervals. */
  proof: 'M4 20h16M7 16V6M5.5 6h3M5.5 16h3M12 13V4M10.5 4h3M10.5 13h3M17 17v-7M15.5 10h3M15.5 17h3',
  /* A small board in a stick. */
  prop: 'M8 2.5h8v19H8zM10.5 6h3v3.5h-3zM12 9.5V13M10.5 13h3M10.5 16h3M10.5 18.5h3',
  record: 'M12 5a7 7 0 1 0 .01 0M12 9.5a2.5 2.5 0 1 0 .01 0',
  bin: 'M5 7h14M10 7V4.5h4V7M7 7l1 13h8l1-13M10.5 10.5v6M13.5 10.5v6',
  shelf: 'M4 20h16M5.5 20V6h4v14M9.5 20V9h4v11M14 9.5l3.6-1.2L21 19l-3.5 1',
  plus: 'M12 5v14M5 12h14',
  pen: 'M5 19l1-4L16.5 4.5l3 3L9 18l-4 1zM14 7l3 3',
  walk: 'M13 3.5a1.4 1.4 0 1 0 .01 0M12 8l-1 6 4 3 1 4.5M11 14l-2 3-3 4M12 8l-4 2-1 3M12 8l2 3 3.5 1',
  check: 'M4.5 12.5 10 18 19.5 6.5',
  cross: 'M6 6l12 12M18 6 6 18',
  play: 'M8 5v14l11-7z',
  pause: 'M8.5 5.5v13M15.5 5.5v13',
  loop: 'M6 10a6.5 6.5 0 0 1 11.5-2.5L19 9M18 14a6.5 6.5 0 0 1-11.5 2.5L5 15M19 4.5V9h-4.5M5 19.5V15h4.5',
} as const

export type IconName = keyof typeof PATHS

export const ICON_NAMES = Object.keys(PATHS) as IconName[]

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={PATHS[name]} />
    </svg>
  )
}
