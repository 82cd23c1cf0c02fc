import type { ComponentChildren, RefObject } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { focusAfter, type Rows, rowsWanted, runsOf } from './rows'

interface LongListProps<T> {
  items: readonly T[]
  keyOf: (item: T) => string
  row: (item: T) => ComponentChildren
  /** Height of a usual row before one was measured, px. */
  rowPx: number
  /** Item that stays in the page wherever it lies, such as one that is open. */
  kept?: string | null
  listClass: string
  rowClass?: string
}

/**
 * A list of any length of which only the rows near the window are in the page; the others are held
 * open by their height. Rows say their place to screen readers; arrow keys, Home and End move from
 * row to row, and the row with the focus is never taken away.
 */
export function LongList<T>({
  items,
  keyOf,
  row,
  rowPx,
  kept,
  listClass,
  rowClass,
}: LongListProps<T>) {
  const list = useRef<HTMLUListElement>(null)
  const height = useRef(rowPx)
  const rows = useRowsNear(list, height, items.length)
  const [focused, setFocused] = useState<number | null>(null)
  const toFocus = useRef<number | null>(null)

  useEffect(() => {
    const usual = list.current?.querySelector<HTMLElement>('li[aria-posinset]:not([data-kept])')
    if (usual && usual.offsetHeight > 0) height.current = usual.offsetHeight
    if (toFocus.current === null) return
    if (focusRow(list.current, toFocus.current)) toFocus.current = null
  })

  const keptAt = kept == null ? -1 : items.findIndex((item) => keyOf(item) === kept)
  const always = [keptAt, focused ?? -1].filter((at) => at >= 0 && at < items.length)

  const onKeyDown = (event: KeyboardEvent) => {
    // Keys may come faster than rows that are still to be put in.
    const from = toFocus.current ?? indexOf(event.target)
    const next = focusAfter(event.key, from, items.length)
    // Keys of what is inside a row, such as a field or a slider, are its own.
    if (next === null || !(event.target as Element).matches('a, button')) return
    event.preventDefault()
    toFocus.current = focusRow(list.current, next) ? null : next
    setFocused(next)
  }

  return (
    <ul
      ref={list}
      class={listClass}
      onKeyDown={onKeyDown}
      onFocusCapture={(event) => setFocused(indexOf(event.target))}
      onBlurCapture={() => setFocused(null)}
    >
      {runsOf(rows, always, items.length).map((run) =>
        'gap' in run ? (
          <li
            key={`gap ${run.from}`}
            aria-hidden="true"
            style={{ height: `${run.gap * height.current}px` }}
          />
        ) : (
          items.slice(run.from, run.to).map((item, i) => (
            <li
              key={keyOf(item)}
              class={rowClass}
              aria-setsize={items.length}
              aria-posinset={run.from + i + 1}
              data-kept={run.from + i === keptAt || undefined}
            >
              {row(item)}
            </li>
          ))
        ),
      )}
    </ul>
  )
}

/** Rows of the list that lie in the window or near it, as it scrolls. */
function useRowsNear(
  list: RefObject<HTMLUListElement | null>,
  height: RefObject<number>,
  count: number,
): Rows {
  const [rows, setRows] = useState<Rows>({ first: 0, last: 0 })
  useLayoutEffect(() => {
    const look = () => {
      const box = list.current?.getBoundingClientRect()
      if (box === undefined) return
      const wanted = rowsWanted(box.top, window.innerHeight, height.current ?? 1, count)
      setRows((now) => (now.first === wanted.first && now.last === wanted.last ? now : wanted))
    }
    look()
    // Captured: whichever of the elements around scrolls.
    document.addEventListener('scroll', look, { capture: true, passive: true })
    window.addEventListener('resize', look)
    return () => {
      document.removeEventListener('scroll', look, { capture: true })
      window.removeEventListener('resize', look)
    }
  }, [count])
  return rows
}

/** Whether the row is in the page, and so has the focus now. */
function focusRow(list: HTMLElement | null, index: number): boolean {
  const row = list?.querySelector(`li[aria-posinset="${index + 1}"]`)
  row?.scrollIntoView({ block: 'nearest' })
  row?.querySelector<HTMLElement>('a, button')?.focus({ preventScroll: true })
  return row != null
}

/** Index of the row that holds the element; null outside of one. */
function indexOf(target: EventTarget | null): number | null {
  const place = (target as Element | null)?.closest('li')?.getAttribute('aria-posinset')
  return place == null ? null : Number(place) - 1
}
