import { fileWord } from '../../shared/format/file-names'
import { writeZip } from '../../shared/format/zip-write'
import { type Plot, plotFile } from '../../shared/report/plots/plot'
import { reportPlots } from '../../shared/report/report'
import type { ReportData } from '../../shared/report/report-data'
import { fileStem } from './report-file'

/** Pixels of a picture for each unit of its drawing: sharp at 300 dots an inch and half a column. */
const SCALE = 3

/** Every plot of a report as PNG and as SVG, in one ZIP. */
export async function plotsFile(
  data: ReportData,
): Promise<{ fileName: string; bytes: Uint8Array }> {
  const files: [string, Uint8Array][] = []
  const taken = new Set<string>()
  for (const plot of reportPlots(data)) {
    const word = freeWord(plot, data, taken)
    const svg = plotFile(plot)
    files.push([`${word}.svg`, new TextEncoder().encode(svg)])
    files.push([`${word}.png`, await pngOf(svg, plot)])
  }
  return { fileName: `${fileStem(data)}-plots.zip`, bytes: writeZip(files) }
}

/** Ribbons are named after their gesture. */
function freeWord({ key, title }: Plot, data: ReportData, taken: Set<string>): string {
  const gesture = data.library.gestures.find(({ id }) => key === `ribbon-${id}`)
  const word = gesture === undefined ? key : `ribbon-${fileWord(gesture.name, 'gesture')}`
  let free = word || fileWord(title, 'plot')
  for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${word}-${n}`
  taken.add(free.toLowerCase())
  return free
}

/** Draws an SVG on a canvas and reads it back as PNG. */
async function pngOf(svg: string, { width, height }: Plot): Promise<Uint8Array> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    const image = new Image(width, height)
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = Math.round(width * SCALE)
    canvas.height = Math.round(height * SCALE)
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'))
    return new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0))
  } finally {
    URL.revokeObjectURL(address)
  }
}
