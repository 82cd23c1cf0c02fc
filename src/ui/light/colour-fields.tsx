import { useState } from 'preact/hooks'
import { hueOf, tinted } from '../../shared/light/colour-wheel'
import { levelOf, lightnessOf } from '../../shared/light/lightness'
import { screenCss } from '../../shared/light/screen-colour'
import type { Emission } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { Slider } from '../common'

/** Colours along a slider as a CSS gradient. */
function trackOf(colourAt: (share: number) => Emission): string {
  const stops = Array.from({ length: 13 }, (_, i) => {
    const [red, green, blue] = colourAt(i / 12)
    return screenCss([red / 255, green / 255, blue / 255])
  })
  return `linear-gradient(90deg, ${stops.join(', ')})`
}

/** Hue and saturation; white keeps the hue that was chosen before, for the way back. */
export function ColourFields(props: { colour: Emission; onChange: (colour: Emission) => void }) {
  const { colour, onChange } = props
  const found = hueOf(colour)
  const [kept, setKept] = useState(found.turn)
  const turn = found.saturation > 0.02 ? found.turn : kept
  const change = (nextTurn: number, saturation: number) => {
    setKept(nextTurn)
    onChange(tinted(nextTurn, saturation))
  }
  return (
    <>
      <Slider
        label={LIGHT_EFFECT.kind.hue}
        value={Math.round(turn * 360)}
        min={0}
        max={359}
        text={`${Math.round(turn * 360)}°`}
        track={trackOf((share) => tinted(share, Math.max(0.35, found.saturation)))}
        onInput={(degrees) => change(degrees / 360, Math.max(0.35, found.saturation))}
      />
      <Slider
        label={LIGHT_EFFECT.kind.saturation}
        value={Math.round(found.saturation * 100)}
        min={0}
        max={100}
        text={`${Math.round(found.saturation * 100)} %`}
        track={trackOf((share) => tinted(turn, share))}
        onInput={(percent) => change(turn, percent / 100)}
      />
    </>
  )
}

/** Brightness in steps that look equal: L* of CIE 1976. */
export function LevelField(props: {
  label: string
  level: number
  colour: Emission
  onChange: (level: number) => void
}) {
  const [red, green, blue] = props.colour
  const lightness = lightnessOf(props.level)
  const track = `linear-gradient(90deg, #000, ${screenCss([red / 255, green / 255, blue / 255])})`
  return (
    <Slider
      label={props.label}
      value={lightness}
      min={0}
      max={100}
      text={LIGHT_EFFECT.kind.lightness(lightness)}
      track={track}
      onInput={(value) => props.onChange(levelOf(value))}
    />
  )
}
