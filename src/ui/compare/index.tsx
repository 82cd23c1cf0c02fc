import '../proof/proof.css'
import './compare.css'
import { useEffect, useState } from 'preact/hooks'
import type { Holdout } from '../../shared/model/evaluation'
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
    <Screen title="Models compared" back="#/proof">
      {app.library.current.value === null ? (
        <NextStep text="There is no library open." action="Go to Moves" href="#/moves" />
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
          legend="Hold out"
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
      <p>
        Every model that is trained is kept here with how it did. Change something, measure again,
        and see which takes went from wrong to right, which the other way, and whether that is more
        than chance.
      </p>
      <NextStep
        text={
          one
            ? 'One model is measured so far: change takes or settings, then measure again.'
            : 'No model is measured yet.'
        }
        action="Measure on Proof"
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
      <SelectField label="A" value={first.id} options={options} onChange={setFirst} />
      <SelectField label="B" value={second.id} options={options} onChange={setSecond} />
      {first.id === second.id ? (
        <Notice>
          <p>A and B are the same model: choose two.</p>
        </Notice>
      ) : (
        <Compared first={first.model} second={second.model} holdout={holdout} />
      )}
    </>
  )
}
