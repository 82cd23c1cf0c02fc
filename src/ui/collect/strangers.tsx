import { COLLECT_HOME } from '../../shared/words/en/collect-home'
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
    <Section title={COLLECT_HOME.decide.strangers}>
      {report.strangers.map(({ id, name, takes, to }) => (
        <SelectField
          key={id}
          label={COLLECT_HOME.decide.stranger(name, takes)}
          value={to ?? ''}
          options={[{ value: '', text: COLLECT_HOME.decide.addAsNew(name) }, ...own]}
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
    <Section title={COLLECT_HOME.decide.sharedCodes}>
      {report.sharedCodes.map(({ code, samePerson }) => (
        <Choice
          key={code}
          legend={COLLECT_HOME.decide.sharedCode(code)}
          value={samePerson ? 'same' : 'two'}
          options={[
            { value: 'two', text: COLLECT_HOME.decide.twoPeople },
            { value: 'same', text: COLLECT_HOME.decide.onePerson },
          ]}
          onChange={(value) => collect.setSamePerson(code, value === 'same')}
        />
      ))}
    </Section>
  )
}
