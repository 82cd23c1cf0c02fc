import { MOST_KEPT } from '../../shared/compare/kept-model'
import { COMPARE_SCREENS } from '../../shared/words/en/compare-screens'
import { modelDetail, modelTitle } from '../../shared/words/en/model-words'
import type { KeptEntry, ModelsState } from '../../state/models'
import { Button, Section } from '../common'

/** All that are kept, with the means to keep one for good or to let it go. */
export function KeptModels({ state, models }: { state: ModelsState; models: KeptEntry[] }) {
  if (models.length === 0) return null
  const now = Date.now()
  return (
    <Section title={COMPARE_SCREENS.kept.title} aside={<span>{models.length}</span>}>
      <p class="small quiet">{COMPARE_SCREENS.kept.hint(MOST_KEPT)}</p>
      {models.map(({ id, keptAt, model }) => (
        <div key={id} class="compare-model">
          <div>
            <p>{modelTitle(model, keptAt, now)}</p>
            <p class="small quiet">{modelDetail(model)}</p>
          </div>
          <div class="buttons">
            <Button tone="quiet" onClick={() => void state.pin(id, !model.pinned)}>
              {model.pinned ? COMPARE_SCREENS.kept.unpin : COMPARE_SCREENS.kept.pin}
            </Button>
            <Button tone="quiet" onClick={() => void state.remove(id)}>
              {COMPARE_SCREENS.kept.remove}
            </Button>
          </div>
        </div>
      ))}
    </Section>
  )
}
