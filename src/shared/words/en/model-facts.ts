import { byteText, groupDigits, percent } from './numbers'

/** What a model takes of the target, and what does not fit. */
export const MODEL_FACTS = {
  flash: 'Flash for tables',
  ram: 'RAM',
  ofBudget: (bytes: number, budget: number) =>
    `${percent(bytes / budget)} of the ${byteText(budget)} for the model`,
  ofRam: (bytes: number, ram: number) =>
    `${percent(bytes / ram)} of ${byteText(ram)}, without the stack`,
  templates: 'Templates',
  templatesNote: ({
    templates,
    points,
    axes,
  }: {
    templates: number
    points: number
    axes: number
  }) => `${templates} templates × ${points} points × ${axes} axes`,
  kernel: 'Kernel features',
  kernelNote: (features: number, counts: number) =>
    `${groupDigits(features)} features, ${counts} counts each, an int8 weight a gesture and count`,
  work: 'Work of a decision, at most',
  workNote: (hasKernel: boolean) =>
    `multiplications: templates × cells in the band × axes${hasKernel ? '; kernel features come on top, see Budget' : ''}`,
  flashTooSmall:
    'The tables are larger than the flash for the model: fewer templates or fewer points.',
  ramTooSmall:
    'The recogniser needs more RAM than the target has: shorter movements or fewer points.',
}
