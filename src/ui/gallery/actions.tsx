import { useState } from 'preact/hooks'
import { fail } from '../../shared/model/result'
import { GALLERY } from '../../shared/words/en/gallery'
import { Button, FileButton, NameForm, NextStep } from '../common'
import { Part } from './part'

const idle = () => undefined

export function Actions() {
  const [pressed, setPressed] = useState(true)
  const [naming, setNaming] = useState(false)
  return (
    <>
      <Part name={GALLERY.button} says={GALLERY.buttonSays}>
        <div class="buttons">
          <Button tone="amber" onClick={idle}>
            {GALLERY.measure}
          </Button>
          <Button onClick={idle}>{GALLERY.plain}</Button>
          <Button tone="quiet" onClick={idle}>
            {GALLERY.quiet}
          </Button>
          <Button pressed={pressed} onClick={() => setPressed(!pressed)}>
            {pressed ? GALLERY.pressed : GALLERY.notPressed}
          </Button>
          <Button disabled>{GALLERY.disabled}</Button>
          <Button tone="amber" disabled>
            {GALLERY.disabled}
          </Button>
        </div>
        <Button big wide onClick={idle}>
          {GALLERY.bigAndWide}
        </Button>
      </Part>
      <Part name={GALLERY.fileButton} says={GALLERY.fileButtonSays}>
        <FileButton accept=".none" onFiles={idle}>
          {GALLERY.chooseAFile}
        </FileButton>
      </Part>
      <Part name={GALLERY.nextStep} says={GALLERY.nextStepSays}>
        <NextStep
          quiet
          text={GALLERY.nextStepExample}
          action={GALLERY.lookAtThem}
          href="#/gallery"
        />
      </Part>
      <Part name={GALLERY.nameForm} says={GALLERY.nameFormSays}>
        {naming ? (
          <NameForm
            label={GALLERY.nameOfTheGesture}
            action={GALLERY.rename}
            before={GALLERY.ring}
            hint={GALLERY.nameHint}
            submit={async (name) => fail('name/example', GALLERY.nothingRenamed(name))}
            onCancel={() => setNaming(false)}
          />
        ) : (
          <div class="buttons">
            <Button onClick={() => setNaming(true)}>{GALLERY.rename}</Button>
          </div>
        )}
      </Part>
    </>
  )
}
