import type { Picture } from '../shared/qr/read-code'

/** The part of the Barcode Detection API (WICG Shape Detection) that is used here. */
interface DetectorLike {
  detect(source: CanvasImageSource): Promise<{ rawValue: string }[]>
}

interface DetectorClass {
  new (options: { formats: string[] }): DetectorLike
  getSupportedFormats(): Promise<string[]>
}

/** Text of the code that a video shows at this moment, or null. */
export type CodeReader = (video: HTMLVideoElement) => Promise<string | null>

/** The platform's own detector where there is one; else a decoder that is loaded now. */
export async function createCodeReader(): Promise<CodeReader> {
  return (await platformReader()) ?? (await packageReader())
}

async function platformReader(): Promise<CodeReader | null> {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorClass }
  try {
    const formats = (await BarcodeDetector?.getSupportedFormats()) ?? []
    if (BarcodeDetector === undefined || !formats.includes('qr_code')) return null
    const detector = new BarcodeDetector({ formats: ['qr_code'] })
    return async (video) => (await detector.detect(video))[0]?.rawValue ?? null
  } catch {
    // There in name only, as on a desk without the service behind it.
    return null
  }
}

async function packageReader(): Promise<CodeReader> {
  const { readCode } = await import('../shared/qr/read-code')
  const canvas = document.createElement('canvas')
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  return async (video) => {
    const picture = pen === null ? null : pictureOf(video, canvas, pen)
    return picture === null ? null : readCode(picture)
  }
}

function pictureOf(
  video: HTMLVideoElement,
  canvas: HTMLCanvasElement,
  pen: CanvasRenderingContext2D,
): Picture | null {
  const { videoWidth: width, videoHeight: height } = video
  if (width === 0 || height === 0) return null
  canvas.width = width
  canvas.height = height
  pen.drawImage(video, 0, 0)
  return pen.getImageData(0, 0, width, height)
}
