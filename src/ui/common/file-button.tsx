import type { ComponentChildren } from 'preact'

export interface FileButtonProps {
  /** As the accept attribute of a file input. */
  accept: string
  multiple?: boolean
  /** At least one file. */
  onFiles: (files: File[]) => void
  children: ComponentChildren
}

/** A button that asks for files of this device. */
export function FileButton({ accept, multiple = false, onFiles, children }: FileButtonProps) {
  return (
    <label class="button button-plain button-wide file-button">
      <input
        type="file"
        class="unseen"
        accept={accept}
        multiple={multiple}
        onChange={(event) => {
          const input = event.currentTarget
          const files = [...(input.files ?? [])]
          // Emptied, so that the same file can be chosen again after it was mended.
          input.value = ''
          if (files.length > 0) onFiles(files)
        }}
      />
      {children}
    </label>
  )
}
