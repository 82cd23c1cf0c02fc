import './collect.css'
import { useEffect, useState } from 'preact/hooks'
import type { CollectState } from '../../state/collect'
import { useApp } from '../common'
import { BringScreen } from './bring-screen'
import { CameraScreen } from './camera-screen'
import { CodeScreen } from './code-screen'
import { DropZone } from './drop-zone'
import { Overview } from './overview'
import { PlanScreen } from './plan-screen'
import { SharedScreen } from './shared-screen'
import { TestersScreen } from './testers-screen'

/** '#/collect': plans, what comes home, and the testers side by side. */
export function CollectPlace({ rest }: { rest: string[] }) {
  const app = useApp()
  const [collect, setCollect] = useState<CollectState | null>(null)
  useEffect(() => {
    void app.openCollect().then(setCollect)
  }, [app])
  if (collect === null) return null
  return (
    <DropZone collect={collect}>
      <Shown collect={collect} rest={rest} />
    </DropZone>
  )
}

function Shown({ collect, rest: [what = '', id = ''] }: { collect: CollectState; rest: string[] }) {
  switch (what) {
    case 'plan':
      return <PlanScreen key={id} collect={collect} id={id} />
    case 'code':
      return <CodeScreen key={id} collect={collect} id={id} />
    case 'bring':
      return <BringScreen collect={collect} />
    case 'camera':
      return <CameraScreen collect={collect} />
    case 'shared':
      return <SharedScreen collect={collect} />
    case 'testers':
      return <TestersScreen collect={collect} />
    default:
      return <Overview collect={collect} />
  }
}
