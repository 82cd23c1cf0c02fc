import '../proof/proof.css'
import './compare.css'
import { useEffect, useState } from 'preact/hooks'
import type { Holdout } from '../../shared/model/evaluation'
import { COMPARE_SCREENS } from '../../shared/words/en/compare-screens'
import { modelTitle } from '../../shared/words/en/model-words'
import { HOLDOUT_WORDS } from '../../shared/words/en/trust'
import type { KeptEntry, ModelsState } from '../../state/models'
import { Choice, NextStep, Notice, Screen, SelectField, useApp } from '../common'
import { Compared } from './compared'
import { KeptModels } from './kept-models'

const HOLDOUTS: readonly Holdout[] = ['tester', 'take']

/** Two kept models on the same takes: what changed, what it means, what to do. */
export function CompareScreen() {
  const app = useApp()
  const [state, setState] = useState<ModelsState | null>(null)
  useEffect(() => {
    void app.openModels().then(setState)
  }, [app])
  const models = state?.models.value ?? null
  return (
    <Screen title={COMPARE_SCREENS.title} back="#/proof">
      {app.library.current.value === null ? (
        <NextStep
          text={COMPARE_SCREENS.noLibrary}
          action={COMPARE_SCREENS.toMoves}
          href="#/moves"
        />
      ) : (
        state !== null && models !== null && <Models state={state} models={models} />
      )}
    </Screen>
  )
}

function Models({ state, models }: { state: ModelsState; models: KeptEntry[] }) {
  const measured = (holdout: Holdout) =>
    models.filter(({ model }) => model.evaluations[holdout] !== undefined)
  const possible = HOLDOUTS.filter((holdout) => measured(holdout).length > 1)
  const [wish, setWish] = useState<Holdout | null>(null)
  const holdout = possible.find((one) => one === wish) ?? possible[0]
  return (
    <>
      {possible.length > 1 && holdout !== undefined && (
        <Choice
          legend={COMPARE_SCREENS.holdOut}
          value={holdout}
          options={possible.map((value) => ({ value, text: HOLDOUT_WORDS[value].name }))}
          onChange={setWish}
        />
      )}
      {holdout === undefined ? (
        <TooFew models={models} />
      ) : (
        <Pair key={holdout} models={measured(holdout)} holdout={holdout} />
      )}
      <KeptModels state={state} models={models} />
    </>
  )
}

function TooFew({ models }: { models: KeptEntry[] }) {
  const one = models.some(({ model }) => Object.keys(model.evaluations).length > 0)
  return (
    <>
      <p>{COMPARE_SCREENS.about}</p>
      <NextStep
        text={one ? COMPARE_SCREENS.oneMeasured : COMPARE_SCREENS.noneMeasured}
        action={COMPARE_SCREENS.measure}
        href="#/proof"
      />
    </>
  )
}

/** The newer of two is B; the last two to begin with. */
function Pair({ models, holdout }: { models: KeptEntry[]; holdout: Holdout }) {
  const [firstId, setFirst] = useState<string | null>(null)
  const [secondId, setSecond] = useState<string | null>(null)
  const second = models.find(({ id }) => id === secondId) ?? models[0]
  const first =
    models.find(({ id }) => id === firstId) ?? models.find(({ id }) => id !== second?.id)
  const now = Date.now()
  const options = models.map(({ id, keptAt, model }) => ({
    value: id,
    text: modelTitle(model, keptAt, now),
  }))
  if (first === undefined || second === undefined) return null
  return (
    <>
      <SelectField
        label={COMPARE_SCREENS.first}
        value={first.id}
        options={options}
        onChange={setFirst}
      />
      <SelectField
        label={COMPARE_SCREENS.second}
        value={second.id}
        options={options}
        onChange={setSecond}
      />
      {first.id === second.id ? (
        <Notice>
          <p>{COMPARE_SCREENS.sameModel}</p>
        </Notice>
      ) : (
        <Compared first={first.model} second={second.model} holdout={holdout} />
      )}
    </>
  )
}
