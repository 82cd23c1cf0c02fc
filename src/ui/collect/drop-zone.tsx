import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { CollectState } from '../../state/collect'
import { bringFiles } from './bring-files'

/** Takes files that are dropped or pasted anywhere on these screens. */
export function DropZone({
  collect,
  children,
}: {
  collect: CollectState
  children: ComponentChildren
}) {
  const [over, setOver] = useState(false)
  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])]
      if (files.length === 0) return
      event.preventDefault()
      bringFiles(collect, files)
    }
    document.addEventListener('paste', onPaste)
    return () => document.removeEventListener('paste', onPaste)
  }, [collect])
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a place for the pointer; the button beside does the same
    <div
      class={over ? 'drop-zone drop-zone-over' : 'drop-zone'}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault()
        setOver(false)
        bringFiles(collect, [...(event.dataTransfer?.files ?? [])])
      }}
    >
      {children}
    </div>
  )
}
