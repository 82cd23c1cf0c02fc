import type { ComponentChildren } from 'preact'

export interface FileButtonProps {
  /** As the accept attribute of a file input. */
  accept: string
  onFile: (file: File) => void
  children: ComponentChildren
}

/** A button that asks for one file of this device. */
export function FileButton({ accept, onFile, children }: FileButtonProps) {
  return (
    <label class="button button-plain button-wide file-button">
      <input
        type="file"
        class="unseen"
        accept={accept}
        onChange={(event) => {
          const input = event.currentTarget
          const file = input.files?.[0]
          // Emptied, so that the same file can be chosen again after it was mended.
          input.value = ''
          if (file !== undefined) onFile(file)
        }}
      />
      {children}
    </label>
  )
}
