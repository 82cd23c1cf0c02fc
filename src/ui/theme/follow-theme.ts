import { effect } from '@preact/signals'
import { preferences } from '../../state/preferences'

/** Sets the chosen theme on the document, and the browser's own frame with it. */
export function followTheme(): () => void {
  const root = document.documentElement
  const frame = document.querySelector<HTMLMetaElement>('meta[name=theme-color]')
  const paintFrame = () => {
    const ground = getComputedStyle(root).getPropertyValue('--ground').trim()
    if (frame !== null && ground !== '') frame.content = ground
  }
  const system = matchMedia('(prefers-color-scheme: light)')
  system.addEventListener('change', paintFrame)
  const stop = effect(() => {
    const { theme } = preferences.value
    if (theme === 'auto') delete root.dataset.theme
    else root.dataset.theme = theme
    paintFrame()
  })
  return () => {
    stop()
    system.removeEventListener('change', paintFrame)
  }
}
