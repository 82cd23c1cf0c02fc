import { useState } from 'preact/hooks'
import { COLLECT_HOME } from '../../shared/words/en/collect-home'
import type { CollectState, UnreadFile } from '../../state/collect'
import { Button, Field, Notice, Section, TextField, useApp, wayFromHere } from '../common'
import { BRING } from './bring-files'

/** The team's folder on a server: off until somebody names one. */
export function FolderSection({ collect }: { collect: CollectState }) {
  const { address } = collect.folder
  const [naming, setNaming] = useState(false)
  return (
    <Section title={COLLECT_HOME.folder.title}>
      {address.value !== '' ? (
        <OwnFolder collect={collect} />
      ) : naming ? (
        <NameFolder collect={collect} onDone={() => setNaming(false)} />
      ) : (
        <>
          <p class="quiet small">{COLLECT_HOME.folder.off}</p>
          <div class="buttons">
            <Button onClick={() => setNaming(true)}>{COLLECT_HOME.folder.use}</Button>
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
        label={COLLECT_HOME.folder.address}
        value={address}
        onInput={setAddress}
        focused
        wrong={wrong !== null}
        hint={wrong ?? COLLECT_HOME.folder.addressHint(location.origin)}
      />
      <TextField label={COLLECT_HOME.folder.user} value={user} onInput={setUser} />
      <Field label={COLLECT_HOME.folder.password}>
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
          {folder.busy.value ?? COLLECT_HOME.folder.useIt}
        </Button>
        <Button tone="quiet" onClick={onDone}>
          {COLLECT_HOME.folder.cancel}
        </Button>
      </div>
    </form>
  )
}

function OwnFolder({ collect }: { collect: CollectState }) {
  const app = useApp()
  const { folder } = collect
  const [said, setSaid] = useState<{ text: string; tone: 'plain' | 'trouble' } | null>(null)
  const [unread, setUnread] = useState<readonly UnreadFile[]>([])
  const busy = folder.busy.value
  const fetchNew = async () => {
    const lead = wayFromHere()
    const fetched = await folder.fetchNew()
    if (!fetched.ok) return setSaid({ text: fetched.message, tone: 'trouble' })
    const { files, unread } = fetched.value
    setUnread(unread)
    if (files.length > 0) {
      void collect.bring(files, unread)
      return lead(BRING)
    }
    const isAll = unread.length === 0
    const text = isAll ? COLLECT_HOME.folder.nothingNew : COLLECT_HOME.folder.unread(unread.length)
    setSaid({ text, tone: isAll ? 'plain' : 'trouble' })
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
      {unread.map(({ name, wrong }) => (
        <p key={name} class="quiet">
          {COLLECT_HOME.bring.fileTrouble(name, wrong)}
        </p>
      ))}
      <div class="buttons">
        <Button disabled={busy !== null} onClick={() => void fetchNew()}>
          {busy ?? COLLECT_HOME.folder.fetch}
        </Button>
        <Button disabled={busy !== null} onClick={() => void send()}>
          {COLLECT_HOME.folder.send}
        </Button>
        <Button tone="quiet" onClick={() => folder.turnOff()}>
          {COLLECT_HOME.folder.turnOff}
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
  if (files.length === 0) return { ok: true, text: COLLECT_HOME.folder.noSession }
  const sent = await folder.send(files)
  if (!sent.ok) return { ok: false, text: sent.message }
  const { stored, there } = sent.value
  return { ok: true, text: COLLECT_HOME.folder.stored(stored, there) }
}
