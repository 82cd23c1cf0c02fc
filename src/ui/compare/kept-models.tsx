import { MOST_KEPT } from '../../shared/compare/kept-model'
import { modelDetail, modelTitle } from '../../shared/words/en/model-words'
import type { KeptEntry, ModelsState } from '../../state/models'
import { Button, Section } from '../common'

/** All that are kept, with the means to keep one for good or to let it go. */
export function KeptModels({ state, models }: { state: ModelsState; models: KeptEntry[] }) {
  if (models.length === 0) return null
  const now = Date.now()
  return (
    <Section title="Kept models" aside={<span>{models.length}</span>}>
      <p class="small quiet">
        The last {MOST_KEPT} are kept; those you pin stay until you remove them.
      </p>
      {models.map(({ id, keptAt, model }) => (
        <div key={id} class="compare-model">
          <div>
            <p>{modelTitle(model, keptAt, now)}</p>
            <p class="small quiet">{modelDetail(model)}</p>
          </div>
          <div class="buttons">
            <Button tone="quiet" onClick={() => void state.pin(id, !model.pinned)}>
              {model.pinned ? 'Unpin' : 'Pin'}
            </Button>
            <Button tone="quiet" onClick={() => void state.remove(id)}>
              Remove
            </Button>
          </div>
        </div>
      ))}
    </Section>
  )
}
