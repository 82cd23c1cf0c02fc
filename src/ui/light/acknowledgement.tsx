import { useState } from 'preact/hooks'
import { lightOf } from '../../shared/light/library-light'
import type { Library } from '../../shared/model/library'
import { Button, Notice, Section, TextField, useApp } from '../common'

/** Light over a limit goes out only on the designer's written word, which stands in the files. */
export function AcknowledgementSection(props: { library: Library; findings: string[] | null }) {
  const { library, findings } = props
  const app = useApp()
  const { acknowledgement } = lightOf(library)
  if (findings === null) return <p class="quiet">Counting flashes of all effects …</p>
  if (findings.length === 0) {
    return <p class="quiet">No effect and no chain is over a limit for flashes or flicker.</p>
  }
  const open = findings.filter((finding) => !acknowledgement?.covers.includes(finding))
  return (
    <Section title="Over a limit">
      <Notice tone="trouble">
        <ul class="notes">
          {findings.map((finding) => (
            <li key={finding}>{finding}</li>
          ))}
        </ul>
      </Notice>
      {open.length > 0 ? (
        <AcknowledgeForm findings={findings} />
      ) : (
        <>
          <p>
            Acknowledged {acknowledgement?.at.slice(0, 10)}: “{acknowledgement?.text}” It stands in
            the exported files.
          </p>
          <Button onClick={() => void app.light.withdraw()}>Withdraw it</Button>
        </>
      )}
    </Section>
  )
}

function AcknowledgeForm({ findings }: { findings: string[] }) {
  const app = useApp()
  const [text, setText] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const acknowledge = async () => {
    const kept = await app.light.acknowledge(text, findings)
    setWrong(kept.ok ? null : kept.message)
  }
  return (
    <form
      class="inline-form"
      onSubmit={(event) => {
        event.preventDefault()
        void acknowledge()
      }}
    >
      <p>
        The firmware is not exported like this, unless you write down why this light may be shown.
        Your words go into the exported files.
      </p>
      <TextField
        label="Who sees it, and how they are kept safe"
        value={text}
        onInput={setText}
        maxLength={2000}
        wrong={wrong !== null}
        {...(wrong === null ? {} : { hint: wrong })}
      />
      <Button submit>Acknowledge in writing</Button>
    </form>
  )
}
