import { plural } from '../../shared/words/en/numbers'
import type { BringReport, CollectState } from '../../state/collect'
import { Choice, Section, SelectField } from '../common'

interface Props {
  collect: CollectState
  report: BringReport
}

/** Gestures of files that the library has not: added, or taken for one it has. */
export function Strangers({ collect, report }: Props) {
  if (report.strangers.length === 0) return null
  const own = report.library.gestures.map(({ id, name }) => ({ value: id, text: name }))
  return (
    <Section title="Gestures not in this library">
      {report.strangers.map(({ id, name, takes, to }) => (
        <SelectField
          key={id}
          label={`${name}, ${plural('take', takes)}`}
          value={to ?? ''}
          options={[{ value: '', text: `Add ${name} as a new gesture` }, ...own]}
          onChange={(value) => collect.mapGesture(id, value === '' ? null : value)}
        />
      ))}
    </Section>
  )
}

/** Codes given by hand on both sides: two people, unless somebody knows better. */
export function SharedCodes({ collect, report }: Props) {
  if (report.sharedCodes.length === 0) return null
  return (
    <Section title="Codes that both sides use">
      {report.sharedCodes.map(({ code, samePerson }) => (
        <Choice
          key={code}
          legend={`Tester ${code} here and in the file`}
          value={samePerson ? 'same' : 'two'}
          options={[
            { value: 'two', text: 'Two people' },
            { value: 'same', text: 'One person' },
          ]}
          onChange={(value) => collect.setSamePerson(code, value === 'same')}
        />
      ))}
    </Section>
  )
}
