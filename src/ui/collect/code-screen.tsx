import { useMemo, useState } from 'preact/hooks'
import { type FittedPlan, fitPlan } from '../../shared/collect/fit-plan'
import type { Plan } from '../../shared/collect/plan'
import { encodePlanLink } from '../../shared/collect/plan-link'
import { COLLECT_PLANS } from '../../shared/words/en/collect-plans'
import { addressTrouble, fittedText } from '../../shared/words/en/collect-words'
import { aboutMinutes } from '../../shared/words/en/session-words'
import type { CollectState } from '../../state/collect'
import { Button, Choice, Field, Notice, Screen, useWakeLock } from '../common'
import { QrCode } from '../frames/qr-code'
import { Missing } from '../moves/missing'
import { usePlanDuration } from './use-plan-duration'

/** The plan as a code to scan and as a link to share. */
export function CodeScreen({ collect, id }: { collect: CollectState; id: string }) {
  const plan = collect.plans.value.find((one) => one.id === id)
  return plan === undefined || plan.gestures.length === 0 ? (
    <Missing what="plan" />
  ) : (
    <Code plan={plan} />
  )
}

function Code({ plan }: { plan: Plan }) {
  const base = `${location.origin}${location.pathname}#/join/`
  const fitted = useMemo(() => fitPlan(plan, base), [plan, base])
  // The screen must not go dark while people come with their phones.
  useWakeLock(true)
  const trouble = addressTrouble(location)
  return (
    <Screen title={COLLECT_PLANS.code.title} back={`#/collect/plan/${plan.id}`}>
      {trouble !== '' && <Notice tone="trouble">{trouble}</Notice>}
      {fitted.ok ? (
        <Fitted fitted={fitted.value} />
      ) : (
        <Notice tone="trouble">{fitted.message}</Notice>
      )}
      <Share plan={plan} base={base} />
    </Screen>
  )
}

function Fitted({ fitted }: { fitted: FittedPlan }) {
  const [shown, setShown] = useState('0')
  const { links } = fitted
  const link = links[Number(shown)] ?? links[0]!
  const durationMs = usePlanDuration(link.plan)
  const names = link.plan.gestures.map(({ name }) => name)
  const left = fittedText(fitted)
  return (
    <>
      <div class="join-code">
        <QrCode text={link.address} label={COLLECT_PLANS.code.opens(names)} />
      </div>
      {links.length > 1 && (
        <Choice
          legend={COLLECT_PLANS.code.legend}
          value={shown}
          options={links.map((_, n) => ({
            value: String(n),
            text: COLLECT_PLANS.code.ofSeveral(n + 1, links.length),
          }))}
          onChange={setShown}
        />
      )}
      <p>{COLLECT_PLANS.code.scan(names, aboutMinutes(durationMs))}</p>
      {left !== '' && <p class="quiet">{left}</p>}
    </>
  )
}

/** The same as a link, which need not fit a code. */
function Share({ plan, base }: { plan: Plan; base: string }) {
  const [said, setSaid] = useState<string | null>(null)
  const link = useMemo(() => encodePlanLink(plan), [plan])
  if (!link.ok) return <Notice tone="trouble">{link.message}</Notice>
  const address = base + link.value
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(address)
      setSaid(COLLECT_PLANS.code.copied)
    } catch {
      setSaid(COLLECT_PLANS.code.notCopied)
    }
  }
  const share = async () => {
    // Closing the sheet is no failure, and nothing else can be said of one.
    await navigator.share({ title: plan.title, url: address }).catch(() => undefined)
  }
  return (
    <>
      <div class="buttons">
        <Button onClick={() => void copy()}>{COLLECT_PLANS.code.copy}</Button>
        {'share' in navigator && (
          <Button onClick={() => void share()}>{COLLECT_PLANS.code.share}</Button>
        )}
      </div>
      {said !== null && <p role="status">{said}</p>}
      <Field label={COLLECT_PLANS.code.link}>
        {({ id }) => (
          <textarea
            id={id}
            class="join-link"
            rows={3}
            readOnly
            value={address}
            onFocus={(event) => event.currentTarget.select()}
          />
        )}
      </Field>
      <p class="quiet small">{COLLECT_PLANS.code.privacy}</p>
    </>
  )
}
