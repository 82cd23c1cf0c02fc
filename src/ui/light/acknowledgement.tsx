import { useState } from 'preact/hooks'
import { lightOf } from '../../shared/light/library-light'
import type { Library } from '../../shared/model/library'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
import { Button, Notice, Section, TextField, useApp } from '../common'

/** Light over a limit goes out only on the designer's written word, which stands in the files. */
export function AcknowledgementSection(props: { library: Library; findings: string[] | null }) {
  const { library, findings } = props
  const app = useApp()
  const { acknowledgement } = lightOf(library)
  if (findings === null) return <p class="quiet">{LIGHT_ANSWERS.limit.counting}</p>
  if (findings.length === 0) {
    return <p class="quiet">{LIGHT_ANSWERS.limit.none}</p>
  }
  const open = findings.filter((finding) => !acknowledgement?.covers.includes(finding))
  return (
    <Section title={LIGHT_ANSWERS.limit.title}>
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
            {LIGHT_ANSWERS.limit.acknowledged(
              acknowledgement?.at.slice(0, 10) ?? '',
              acknowledgement?.text ?? '',
            )}
          </p>
          <Button onClick={() => void app.light.withdraw()}>{LIGHT_ANSWERS.limit.withdraw}</Button>
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
      <p>{LIGHT_ANSWERS.limit.why}</p>
      <TextField
        label={LIGHT_ANSWERS.limit.whoSees}
        value={text}
        onInput={setText}
        maxLength={2000}
        wrong={wrong !== null}
        {...(wrong === null ? {} : { hint: wrong })}
      />
      <Button submit>{LIGHT_ANSWERS.limit.acknowledge}</Button>
    </form>
  )
}
