import { useState } from 'preact/hooks'
import type { CollectState } from '../../state/collect'
import { Button, Field, Notice, navigate, Section, TextField, useApp } from '../common'
import { BRING } from './bring-files'

/** The team's folder on a server: off until somebody names one. */
export function FolderSection({ collect }: { collect: CollectState }) {
  const { address } = collect.folder
  const [naming, setNaming] = useState(false)
  return (
    <Section title="Shared folder">
      {address.value !== '' ? (
        <OwnFolder collect={collect} />
      ) : naming ? (
        <NameFolder collect={collect} onDone={() => setNaming(false)} />
      ) : (
        <>
          <p class="quiet small">
            Off. For teams with a server of their own: sessions go to a WebDAV folder and are
            fetched from it. Nothing else is sent, and only when you tap.
          </p>
          <div class="buttons">
            <Button onClick={() => setNaming(true)}>Use a shared folder</Button>
          </div>
        </>
      )}
    </Section>
  )
}

function NameFolder({ collect, onDone }: { collect: CollectState; onDone: () => void }) {
  const { folder } = collect
  const [address, setAddress] = useState('')
  const [user, setUser] = useState('')
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const submit = async () => {
    const used = await folder.use(address, user, password)
    setWrong(used.ok ? null : used.message)
    if (used.ok) onDone()
  }
  return (
    <form
      class="inline-form"
      onSubmit={(event) => {
        event.preventDefault()
        void submit()
      }}
    >
      <TextField
        label="Address of the folder"
        value={address}
        onInput={setAddress}
        focused
        wrong={wrong !== null}
        hint={wrong ?? `Such as ${location.origin}/team/`}
      />
      <TextField label="Name, if it asks for one" value={user} onInput={setUser} />
      <Field label="Password, kept for this visit only">
        {({ id }) => (
          <input
            id={id}
            type="password"
            autocomplete="off"
            value={password}
            onInput={(event) => setPassword(event.currentTarget.value)}
          />
        )}
      </Field>
      <div class="buttons">
        <Button submit disabled={folder.busy.value !== null}>
          {folder.busy.value ?? 'Use it'}
        </Button>
        <Button tone="quiet" onClick={onDone}>
          Cancel
        </Button>
      </div>
    </form>
  )
}

function OwnFolder({ collect }: { collect: CollectState }) {
  const app = useApp()
  const { folder } = collect
  const [said, setSaid] = useState<{ text: string; tone: 'plain' | 'trouble' } | null>(null)
  const busy = folder.busy.value
  const fetchNew = async () => {
    const fetched = await folder.fetchNew()
    if (!fetched.ok) return setSaid({ text: fetched.message, tone: 'trouble' })
    if (fetched.value.length === 0) return setSaid({ text: 'Nothing new in it.', tone: 'plain' })
    void collect.bring(fetched.value)
    navigate(BRING)
  }
  const send = async () => {
    const sent = await sendOwnSessions(app, collect)
    setSaid({ text: sent.text, tone: sent.ok ? 'plain' : 'trouble' })
  }
  return (
    <>
      <p class="folder-address">{folder.address.value}</p>
      {said !== null && (
        <Notice tone={said.tone} live>
          {said.text}
        </Notice>
      )}
      <div class="buttons">
        <Button disabled={busy !== null} onClick={() => void fetchNew()}>
          {busy ?? 'Fetch new sessions'}
        </Button>
        <Button disabled={busy !== null} onClick={() => void send()}>
          Send this phone's sessions
        </Button>
        <Button tone="quiet" onClick={() => folder.turnOff()}>
          Turn off
        </Button>
      </div>
    </>
  )
}

type AppOf = ReturnType<typeof useApp>

/** Every finished session that testers performed on this phone. */
async function sendOwnSessions(app: AppOf, { folder }: CollectState) {
  const sessions = await app.openSessions()
  await sessions.read()
  const files = []
  for (const { id, endedAt } of sessions.runs.value) {
    if (endedAt === null) continue
    const file = await sessions.finish(id)
    if (!file.ok) return { ok: false, text: file.message }
    files.push(file.value)
  }
  if (files.length === 0) return { ok: true, text: 'No finished session on this phone.' }
  const sent = await folder.send(files)
  if (!sent.ok) return { ok: false, text: sent.message }
  const { stored, there } = sent.value
  return { ok: true, text: `${stored} sent, ${there} there already.` }
}
