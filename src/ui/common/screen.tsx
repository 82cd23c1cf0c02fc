import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { COMMON } from '../../shared/words/en/common'
import { Icon } from './icon'
import { goBack } from './router'

export interface ScreenProps {
  title: string
  /** Route that back leads to when this screen was opened directly, such as '#/moves'. */
  back?: string
  /** Leaves the head out, for a screen that brings its own. */
  bare?: boolean
  /** Small things beside the title. */
  aside?: ComponentChildren
  /** The main action: stays in reach of the thumb while the rest scrolls. */
  foot?: ComponentChildren
  children: ComponentChildren
}

/** One screen: a title, a scrolling middle, and a foot within reach of the thumb. */
export function Screen({ title, back, bare = false, aside, foot, children }: ScreenProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    // What had the focus went with the last screen: readers go on from the new title.
    if (document.activeElement === document.body) heading.current?.focus({ preventScroll: true })
  }, [])
  useEffect(() => {
    document.title = COMMON.documentTitle(title)
  }, [title])
  return (
    <section class="screen" aria-label={title}>
      <div class="screen-scroll">
        <div class="screen-column">
          {!bare && (
            <header class="screen-head">
              {back !== undefined && (
                <button
                  type="button"
                  class="back"
                  aria-label={COMMON.back}
                  onClick={() => goBack(back)}
                >
                  <Icon name="back" />
                </button>
              )}
              <h1 ref={heading} tabIndex={-1}>
                {title}
              </h1>
              {aside !== undefined && <div class="screen-aside">{aside}</div>}
            </header>
          )}
          {children}
        </div>
      </div>
      {foot !== undefined && (
        <div class="screen-foot">
          <div class="screen-column">{foot}</div>
        </div>
      )}
    </section>
  )
}
