import { Button, useApp } from '../common'

/** Says that another tab stores, and takes it over. */
export function PenLine() {
  const app = useApp()
  if (app.writesHere.value) return null
  return (
    <div class="shell-notice">
      <p>Open in another tab, which stores. This one only shows.</p>
      <Button onClick={() => void app.writeHere()}>Store here</Button>
    </div>
  )
}
