import { useState } from 'preact/hooks'
import { withAnswer } from '../../shared/light/edit'
import type { LightOwner } from '../../shared/light/library-light'
import { type MendKind, mend, mendsFor } from '../../shared/light/mend'
import type { LightPlayer } from '../../shared/light/player'
import { checkAnswer, type SafetyFinding } from '../../shared/light/safety'
import type { Answer, LightEffect } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { Button, Icon, Notice } from '../common'

export interface SafetyListProps {
  findings: SafetyFinding[] | null
  player: LightPlayer | null
  library: LightOwner
  answerKey: string
  answer: Answer
  onMend: (effect: LightEffect) => void
  /** Leaves more time between answers; null when there is enough. */
  onSpace: (() => void) | null
}

/** What the check found: number, limit and source of each, and the mends of what is over a limit. */
export function SafetyList(props: SafetyListProps) {
  const { findings } = props
  const [trouble, setTrouble] = useState<string | null>(null)
  if (findings === null) return <p class="quiet">{LIGHT_EFFECT.safety.counting}</p>
  const tryMend = (finding: SafetyFinding, kind: MendKind) => {
    const mended = mendOf(props, finding, kind)
    setTrouble(mended === null ? LIGHT_EFFECT.safety.noHelp : null)
    if (mended !== null) props.onMend(mended)
  }
  return (
    <>
      <ul class="findings">
        {findings.map((finding) => (
          <FindingRow key={finding.rule} finding={finding}>
            {!finding.passes && (
              <div class="buttons">
                {mendsFor(finding, props.answer.light).map((kind) => (
                  <Button key={kind} onClick={() => tryMend(finding, kind)}>
                    {LIGHT_EFFECT.safety.mends[kind]}
                  </Button>
                ))}
                {props.onSpace !== null && (
                  <Button onClick={props.onSpace}>{LIGHT_EFFECT.safety.moreTime}</Button>
                )}
              </div>
            )}
          </FindingRow>
        ))}
      </ul>
      {trouble !== null && (
        <Notice tone="trouble" live>
          <p>{trouble}</p>
        </Notice>
      )}
      <p class="small quiet">{LIGHT_EFFECT.safety.noClaim}</p>
    </>
  )
}

function mendOf(
  { player, library, answerKey, answer }: SafetyListProps,
  finding: SafetyFinding,
  kind: MendKind,
): LightEffect | null {
  if (player === null) return null
  const passes = (light: LightEffect) =>
    checkAnswer(player, withAnswer(library, answerKey, { ...answer, light }), answerKey).every(
      (found) => found.rule !== finding.rule || found.passes,
    )
  return mend(answer.light, kind, passes)
}

/** One figure against its limit; what is over it is told by its hatched edge. */
export function FindingRow(props: { finding: SafetyFinding; children?: preact.ComponentChildren }) {
  const { finding, children } = props
  return (
    <li class={finding.passes ? 'finding' : 'finding finding-over'}>
      <p>
        {finding.passes && <Icon name="check" />} {finding.sentence}
      </p>
      <p class="small quiet">
        {finding.passes ? '' : `${finding.where}. `}
        {finding.source}.
      </p>
      {children}
    </li>
  )
}
