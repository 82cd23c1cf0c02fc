import { useState } from 'preact/hooks'
import { Button, Notice, useApp } from '../common'
import type { OutFile } from '../common/save-file'

export interface SendToFolderProps {
  /** Address that the plan names. */
  folder: string
  file: OutFile
}

/** Sends a session to the team's folder that its plan names: from a tap, and never by itself. */
export function SendToFolder({ folder, file }: SendToFolderProps) {
  const app = useApp()
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<{ text: string; tone: 'plain' | 'trouble' } | null>(null)
  const send = async () => {
    setBusy(true)
    const collect = await app.openCollect()
    const sent = await collect.folder.sendOnce(folder, file)
    setBusy(false)
    setSaid(
      sent.ok
        ? { text: 'Sent. It is in the shared folder.', tone: 'plain' }
        : { text: `${sent.message} Hand the session over as a file instead.`, tone: 'trouble' },
    )
  }
  return (
    <>
      <Button big wide disabled={busy || said?.tone === 'plain'} onClick={() => void send()}>
        {busy ? 'Sending …' : 'Send it to the shared folder'}
      </Button>
      {said !== null && (
        <Notice tone={said.tone} live>
          {said.text}
        </Notice>
      )}
    </>
  )
}
