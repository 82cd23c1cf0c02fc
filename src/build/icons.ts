import { readFileSync, writeFileSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'
import { repositoryPath } from './paths'
import { needTool } from './tools'

// Draws the PNG icons from public/icons/lantern.svg. They are committed, as not everyone who builds
// has a browser that runs without a screen; run this after a change of the drawing:
//   npx tsx src/build/icons.ts

interface Icon {
  name: string
  sizePx: number
  /** Ground to the very edge: the system cuts the shape itself. */
  fullGround: boolean
  /** Share of the edge that the drawing takes; the safe zone of a maskable icon is 0.8 across. */
  scale: number
}

const ICONS: Icon[] = [
  { name: 'lantern-180', sizePx: 180, fullGround: true, scale: 1 },
  { name: 'lantern-192', sizePx: 192, fullGround: false, scale: 1 },
  { name: 'lantern-512', sizePx: 512, fullGround: false, scale: 1 },
  { name: 'lantern-maskable-512', sizePx: 512, fullGround: true, scale: 0.92 },
]

const GROUND = '#0a0f1b'

async function drawIcon(browser: Browser, svg: string, icon: Icon): Promise<Buffer> {
  const page = await browser.newPage({ viewport: { width: icon.sizePx, height: icon.sizePx } })
  const ground = icon.fullGround ? GROUND : 'transparent'
  await page.setContent(`
    <style>
      body { margin: 0; background: ${ground}; }
      svg { display: block; width: 100vw; height: 100vh; transform: scale(${icon.scale}); }
      ${icon.fullGround ? '#ground { rx: 0; }' : ''}
    </style>
    ${svg}`)
  const png = await page.screenshot({ omitBackground: true })
  await page.close()
  return png
}

const executablePath = needTool('chromium')
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
const svg = readFileSync(repositoryPath('public/icons/lantern.svg'), 'utf8')
for (const icon of ICONS) {
  const file = repositoryPath(`public/icons/${icon.name}.png`)
  writeFileSync(file, await drawIcon(browser, svg, icon))
  console.log(`${icon.name}.png ${icon.sizePx} px`)
}
await browser.close()
