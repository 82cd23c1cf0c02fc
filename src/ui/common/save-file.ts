import type { Result } from '../../shared/model/result'
import { fail, ok } from '../../shared/model/result'
import { COMMON } from '../../shared/words/en/common'

export interface OutFile<Bytes extends Uint8Array | Blob = Uint8Array> {
  fileName: string
  bytes: Bytes
  /** Called when the person has the file, and not when the share sheet was closed. */
  handedOver?: () => Promise<void>
}

const TYPES: Record<string, string> = {
  zip: 'application/zip',
  csv: 'text/csv',
  html: 'text/html',
}

/**
 * Hands a file to the person: by the share sheet where files can be shared (phones), else as a
 * download. Must be called from a tap or soon after one. Closing the share sheet is no failure.
 */
export async function saveFile({
  fileName,
  bytes,
  handedOver,
}: OutFile<Uint8Array | Blob>): Promise<Result<null>> {
  const ending = fileName.slice(fileName.lastIndexOf('.') + 1)
  const type = TYPES[ending] ?? 'application/octet-stream'
  const file = new File([bytes as Uint8Array<ArrayBuffer> | Blob], fileName, { type })
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] })
      await handedOver?.()
      return ok(null)
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return ok(null)
      // Making the file took longer than the tap counts, or sharing failed: download instead.
    }
  }
  const saved = download(file)
  if (saved.ok) await handedOver?.()
  return saved
}

function download(file: File): Result<null> {
  try {
    const address = URL.createObjectURL(file)
    const link = document.createElement('a')
    link.href = address
    link.download = file.name
    link.click()
    // The browser reads the address after the click returns.
    setTimeout(() => URL.revokeObjectURL(address), 60_000)
    return ok(null)
  } catch {
    return fail('save/refused', COMMON.saveRefused(file.name))
  }
}
