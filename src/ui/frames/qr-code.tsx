import './frames.css'
import { useMemo } from 'preact/hooks'
import { codePath, drawCode } from '../../shared/qr/draw-code'

/** A QR code, dark on light in either theme: many cameras read no inverted ones. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const drawn = useMemo(() => drawCode(text), [text])
  if (!drawn.ok) return <p role="alert">{drawn.message}</p>
  const side = drawn.value.length
  return (
    <svg class="qr-code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label={label}>
      <rect width={side} height={side} fill="#fff" />
      <path d={codePath(drawn.value)} fill="#000" />
    </svg>
  )
}
