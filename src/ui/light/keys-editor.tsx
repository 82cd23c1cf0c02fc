import { useMemo, useRef, useState } from 'preact/hooks'
import { checkEffect } from '../../shared/light/check-effect'
import { changeKey, copyKey, moveKey, removeKey } from '../../shared/light/edit'
import { screenCss } from '../../shared/light/screen-colour'
import { EASES, type LightEffect, type LightKey } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { Button, SelectField } from '../common'
import { NumberField } from '../prop/number-field'
import { ColourFields, LevelField } from './colour-fields'
import { Strip } from './strip'
import { usePlayer, useRun } from './use-player'

interface KeysEditorProps {
  effect: LightEffect
  onChange: (effect: LightEffect) => void
}

/** Keyframes on a line of time: tap to choose, drag to move, and what the chosen one gives. */
export function KeysEditor({ effect, onChange }: KeysEditorProps) {
  const [chosen, setChosen] = useState(0)
  const index = Math.min(chosen, effect.keys.length - 1)
  const key = effect.keys[index]
  if (key === undefined) return null
  const copied = copyKey(effect, index)
  const removed = removeKey(effect, index)
  return (
    <>
      <RoundStrip effect={effect} />
      <KeyLine effect={effect} chosen={index} onChoose={setChosen} onChange={onChange} />
      <div class="buttons">
        <Button
          disabled={copied === null}
          onClick={() => {
            if (copied === null) return
            onChange(copied)
            setChosen(index + 1)
          }}
        >
          {LIGHT_EFFECT.keys.copy}
        </Button>
        <Button
          tone="quiet"
          disabled={removed === null}
          onClick={() => removed !== null && onChange(removed)}
        >
          {LIGHT_EFFECT.keys.remove}
        </Button>
      </div>
      <KeyFields key={index} effect={effect} index={index} keyframe={key} onChange={onChange} />
    </>
  )
}

/** One round of the keyframes right above their line. */
function RoundStrip({ effect }: { effect: LightEffect }) {
  const player = usePlayer()
  const alone = useMemo(() => {
    const light = { ...effect, fadeMs: 0 }
    const answer = { light, sound: [], vibration: [] }
    return { gestures: [{ id: 'round', name: '', note: '', answer }] }
  }, [effect])
  const sound = checkEffect(effect).ok
  const run = useRun(sound ? player : null, alone, 'round', effect.periodMs)
  return (
    <div class="key-strip">
      <Strip run={run} label={LIGHT_EFFECT.keys.oneRound(effect.periodMs)} />
    </div>
  )
}

function KeyLine(props: KeysEditorProps & { chosen: number; onChoose: (index: number) => void }) {
  const { effect, chosen, onChoose, onChange } = props
  const line = useRef<HTMLDivElement>(null)
  const dragged = useRef<number | null>(null)
  const timeAt = (x: number) => {
    const box = line.current?.getBoundingClientRect()
    return box === undefined || box.width === 0 ? 0 : ((x - box.left) / box.width) * effect.periodMs
  }
  return (
    <div class="key-line" ref={line}>
      {effect.keys.map((key, index) => (
        <button
          type="button"
          key={index}
          class="key-handle"
          aria-label={LIGHT_EFFECT.keys.at(index + 1, key.atMs)}
          aria-pressed={index === chosen}
          style={{
            '--at': `${((100 * key.atMs) / effect.periodMs).toFixed(2)}%`,
            '--light': keyCss(key),
          }}
          onPointerDown={(event) => {
            onChoose(index)
            dragged.current = index
            event.currentTarget.setPointerCapture?.(event.pointerId)
          }}
          onPointerMove={(event) => {
            // The last one sets the length of the round: by its field, as the line grows with it.
            if (dragged.current !== index || index === effect.keys.length - 1) return
            onChange(moveKey(effect, index, timeAt(event.clientX)))
          }}
          onPointerUp={() => {
            dragged.current = null
          }}
          onClick={() => onChoose(index)}
        />
      ))}
    </div>
  )
}

function keyCss({ colour: [red, green, blue], level }: LightKey): string {
  const share = (level / 255) ** 2.4 / 255
  return screenCss([red * share, green * share, blue * share])
}

function KeyFields(props: KeysEditorProps & { index: number; keyframe: LightKey }) {
  const { effect, index, keyframe, onChange } = props
  const change = (next: Partial<LightKey>) => onChange(changeKey(effect, index, next))
  return (
    <>
      <LevelField
        label={LIGHT_EFFECT.keys.brightnessOf(index + 1)}
        level={keyframe.level}
        colour={keyframe.colour}
        onChange={(level) => change({ level })}
      />
      <ColourFields colour={keyframe.colour} onChange={(colour) => change({ colour })} />
      <div class="prop-pair">
        <NumberField
          label={LIGHT_EFFECT.keys.time}
          unit="ms"
          value={keyframe.atMs}
          min={index === 0 ? 0 : 10}
          max={index === 0 ? 0 : 65_535}
          whole
          onChange={(atMs) => onChange(changeKey(effect, index, { atMs }))}
        />
        <SelectField
          label={LIGHT_EFFECT.keys.toTheNext}
          value={keyframe.ease}
          options={EASES.map((value) => ({ value, text: LIGHT_EFFECT.keys.eases[value] }))}
          onChange={(ease) => change({ ease })}
        />
      </div>
    </>
  )
}
