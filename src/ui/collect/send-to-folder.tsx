import { useState } from 'preact/hooks'
import { COLLECT_HOME } from '../../shared/words/en/collect-home'
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
        ? { text: COLLECT_HOME.folder.sent, tone: 'plain' }
        : { text: COLLECT_HOME.folder.asFileInstead(sent.message), tone: 'trouble' },
    )
  }
  return (
    <>
      <Button big wide disabled={busy || said?.tone === 'plain'} onClick={() => void send()}>
        {busy ? COLLECT_HOME.folder.sending : COLLECT_HOME.folder.sendIt}
      </Button>
      {said !== null && (
        <Notice tone={said.tone} live>
          {said.text}
        </Notice>
      )}
    </>
  )
}
