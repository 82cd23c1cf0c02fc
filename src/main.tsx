import { render } from 'preact'
import { createApp } from './state/create-app'
import { startRouter } from './ui/common/router'
import { Shell } from './ui/shell/shell'
import './ui/theme'

const root = document.getElementById('app')
if (root !== null) {
  startRouter()
  const app = await createApp()
  root.textContent = ''
  render(<Shell app={app} />, root)
}
