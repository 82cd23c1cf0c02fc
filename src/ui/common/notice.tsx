import type { ComponentChildren } from 'preact'

export interface NoticeProps {
  /** 'trouble' is told by its hatched edge and its role, not by colour. */
  tone?: 'plain' | 'trouble'
  /** Spoken as soon as it appears. */
  live?: boolean
  children: ComponentChildren
}

/** A remark in the flow of a screen: what was seen, what it means, what to do. */
export function Notice({ tone = 'plain', live = false, children }: NoticeProps) {
  const role = live ? (tone === 'trouble' ? 'alert' : 'status') : undefined
  return (
    <div class={`notice notice-${tone}`} role={role}>
      {children}
    </div>
  )
}
