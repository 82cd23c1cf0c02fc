import { useState } from 'preact/hooks'
import { FileButton, HOME, Notice, navigate, useApp } from '../common'

/** Reads a library file from this device and opens it as a new library. */
export function OpenLibraryFile() {
  const app = useApp()
  const [wrong, setWrong] = useState<string | null>(null)
  const [reading, setReading] = useState(false)
  const read = async (file: File) => {
    setReading(true)
    const added = await app.importLibrary(new Uint8Array(await file.arrayBuffer()))
    setReading(false)
    setWrong(added.ok ? null : `${file.name}: ${added.message}`)
    if (added.ok) navigate(HOME)
  }
  return (
    <>
      <FileButton
        accept=".zip,application/zip"
        onFiles={([file]) => file !== undefined && void read(file)}
      >
        {reading ? 'Reading …' : 'Open a library file'}
      </FileButton>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </>
  )
}
