import type { NextStep } from '../../shared/present/next-step'
import { MOVES } from '../../shared/words/en/moves'
import { Button, navigate, route, useApp } from '../common'
import { startNewTester } from '../record/new-tester'

const ACTIONS: Record<NextStep['kind'], string> = {
  'add-gesture': MOVES.addGesture,
  record: MOVES.recordTakes,
  background: MOVES.recordBackground,
  prove: MOVES.measureIt,
  'look-at-pair': MOVES.lookAtThem,
  try: MOVES.tryIt,
  backup: MOVES.backUp,
}

/** The next useful step at the thumb: one sentence, one button. */
export function FootStep({ step, onAdd }: { step: NextStep; onAdd: () => void }) {
  const app = useApp()
  const go = () => {
    switch (step.kind) {
      case 'add-gesture':
        return onAdd()
      case 'record':
        if (step.newTester) startNewTester(app)
        return navigate(route('record', step.gestureId))
      case 'background':
        return navigate('#/background')
      case 'prove':
      case 'look-at-pair':
        return navigate('#/proof')
      case 'try':
        return navigate('#/try')
      case 'backup':
        return navigate('#/backup')
    }
  }
  return (
    <div class="foot-step">
      <p>{step.text}</p>
      <Button tone="amber" big onClick={go}>
        {ACTIONS[step.kind]}
      </Button>
    </div>
  )
}
