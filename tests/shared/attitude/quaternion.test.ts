import Reference from 'quaternion'
import { describe, expect, test } from 'vitest'
import {
  angleOf,
  between,
  conjugate,
  fromRotationVector,
  multiply,
  NO_ROTATION,
  type Quaternion,
  rotate,
  toMatrix,
} from '../../../src/shared/attitude/quaternion'
import { direction, type Vector3 } from '../../../src/shared/attitude/vector'
import { createRandom } from '../../../src/shared/statistics/random'

const half = Math.SQRT1_2
const about = (axis: Vector3, degrees: number): Quaternion => {
  const unit = direction(axis, [1, 0, 0])
  const angle = (degrees * Math.PI) / 180
  return fromRotationVector([unit[0] * angle, unit[1] * angle, unit[2] * angle])
}
const closeTo = (actual: readonly number[], expected: readonly number[], digits = 9) => {
  expect(actual.length).toBe(expected.length)
  for (const [i, value] of actual.entries()) expect(value).toBeCloseTo(expected[i]!, digits)
}

describe('conversions, as SciPy 1.17.1 gives them', () => {
  test('90° about z', () => {
    closeTo(about([0, 0, 1], 90), [half, 0, 0, half])
    closeTo(toMatrix(about([0, 0, 1], 90)), [0, -1, 0, 1, 0, 0, 0, 0, 1])
  })

  test('180° about x', () => closeTo(about([1, 0, 0], 180), [0, 1, 0, 0]))

  test('120° about 1 1 1 permutes the axes', () => {
    closeTo(about([1, 1, 1], 120), [0.5, 0.5, 0.5, 0.5])
    closeTo(toMatrix(about([1, 1, 1], 120)), [0, 0, 1, 1, 0, 0, 0, 1, 0])
  })

  test('30° about y', () => {
    closeTo(about([0, 1, 0], 30), [0.965925826, 0, 0.258819045, 0])
    closeTo(toMatrix(about([0, 1, 0], 30)), [0.866025404, 0, 0.5, 0, 1, 0, -0.5, 0, 0.866025404])
  })

  test('50° about 1 2 3', () => {
    closeTo(about([1, 2, 3], 50), [0.906307787, 0.112949481, 0.225898963, 0.338848444])
    closeTo(
      toMatrix(about([1, 2, 3], 50)),
      [
        0.66830278, -0.563171626, 0.486013491, 0.665232309, 0.744848293, -0.051642965, -0.332922466,
        0.357825014, 0.872424146,
      ],
    )
  })

  test('turns about z by 90°, y by 45° and x by 30°, each about the axes of the world', () => {
    const zyx = multiply(about([1, 0, 0], 30), multiply(about([0, 1, 0], 45), about([0, 0, 1], 90)))
    closeTo(zyx, [0.560985527, 0.430459335, 0.092295956, 0.701057385])
  })

  test('the attitude of W3C Device Orientation for α 30°, β 40°, γ 50°, and gravity in it', () => {
    const q = multiply(about([0, 0, 1], 30), multiply(about([1, 0, 0], 40), about([0, 1, 0], 50)))
    closeTo(q, [0.785220715, 0.196628226, 0.46382691, 0.360042174])
    closeTo(rotate(conjugate(q), [0, 0, 9.80665]), [-5.754778451, 6.303593113, 4.828832476])
  })

  test('order matters: the two products of 90° about x and y are 120° apart', () => {
    const xy = multiply(about([1, 0, 0], 90), about([0, 1, 0], 90))
    const yx = multiply(about([0, 1, 0], 90), about([1, 0, 0], 90))
    closeTo(xy, [0.5, 0.5, 0.5, 0.5])
    closeTo(yx, [0.5, 0.5, 0.5, -0.5])
    expect((angleOf(multiply(xy, conjugate(yx))) * 180) / Math.PI).toBeCloseTo(120, 9)
  })
})

describe('against the package quaternion', () => {
  const random = createRandom(21)
  const vector = (): Vector3 => [random.normal(), random.normal(), random.normal()]

  test('products, turned vectors and matrices agree', () => {
    for (let i = 0; i < 200; i++) {
      const [a, b, v] = [about(vector(), 170), about(vector(), 40), vector()]
      const [ra, rb] = [new Reference([...a]), new Reference([...b])]
      const product = ra.mul(rb)
      closeTo(multiply(a, b), [product.w, product.x, product.y, product.z], 12)
      closeTo(rotate(a, v), ra.rotateVector([...v]) as number[], 12)
      closeTo(toMatrix(a), ra.toMatrix(false), 12)
    }
  })

  test('the shortest rotation between two directions agrees', () => {
    for (let i = 0; i < 200; i++) {
      const [a, b] = [direction(vector(), [1, 0, 0]), direction(vector(), [1, 0, 0])]
      const reference = Reference.fromVectors([...a], [...b])
      closeTo(between(a, b), [reference.w, reference.x, reference.y, reference.z], 9)
      closeTo(rotate(between(a, b), a), b, 9)
    }
  })
})

test('opposite directions are half a turn apart, equal ones none', () => {
  for (const a of [
    [0, 0, 1],
    [1, 0, 0],
    [0, -1, 0],
  ] as Vector3[]) {
    const opposite: Vector3 = [-a[0], -a[1], -a[2]]
    closeTo(rotate(between(a, opposite), a), opposite, 9)
    expect(angleOf(between(a, opposite))).toBeCloseTo(Math.PI, 9)
    closeTo(between(a, a), NO_ROTATION)
  }
})

test('a hundred steps of 0.9° about x make 90°', () => {
  let q: Quaternion = NO_ROTATION
  for (let i = 0; i < 100; i++) q = multiply(q, about([1, 0, 0], 0.9))
  expect((angleOf(q) * 180) / Math.PI).toBeCloseTo(90, 11)
})

test('tiny rotations keep their digits', () => {
  for (const angle of [1e-3, 1e-4, 1e-6, 0]) {
    expect(fromRotationVector([angle, 0, 0])[1]).toBeCloseTo(Math.sin(angle / 2), 16)
  }
})
