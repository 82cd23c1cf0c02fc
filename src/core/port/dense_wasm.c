/*
 * Dense linear algebra for training, beside the core in the host's module and no part of it: nothing
 * here is exported to a board. Every sum runs over its terms in order, one element of the result in
 * one lane, so builds with and without -msimd128 give the same bits.
 *
 * Products of pairs of rows are in single precision, DEPTH terms at a time, and their sums in double:
 * twice as fast, and off by some 1e-7, where the inverse that follows asks for double throughout.
 */
#include <stdint.h>

#define EXPORT(name) __attribute__((export_name(name)))

typedef double pair __attribute__((vector_size(16)));
/* The same wherever it lies. */
typedef double loose_pair __attribute__((vector_size(16), aligned(8)));

typedef float four __attribute__((vector_size(16)));
typedef float loose_four __attribute__((vector_size(16), aligned(4)));

/* Terms whose part of b is packed at a time; columns beside each other in it; rows of a block. */
#define DEPTH 256
#define WIDE 4
#define BLOCK 64
/* Columns beside each other in single precision. */
#define WIDE_SINGLE 8

/* A matrix read with any strides. */
typedef struct view {
  const double *at;
  int row;
  int column;
} view;

/* sign * b[k][j..j+WIDE) side by side for each k; columns beyond the last are 0. */
static void pack_columns(view b, int k0, int depth, int columns, double sign, double *packed) {
  for (int j = 0; j < columns; j += WIDE)
    for (int k = k0; k < k0 + depth; k++)
      for (int w = 0; w < WIDE; w++)
        *packed++ = j + w < columns ? sign * b.at[k * b.row + (j + w) * b.column] : 0.0;
}

/* Four rows by four columns: c += a b. */
static void four_by_four(double *c, int c_row, const double *a, int a_row, const double *b,
                         int depth) {
  pair sum[4][2];
  for (int i = 0; i < 4; i++)
    for (int h = 0; h < 2; h++) sum[i][h] = *(const loose_pair *)(c + i * c_row + 2 * h);
  for (int k = 0; k < depth; k++, b += WIDE) {
    pair left = *(const loose_pair *)b;
    pair right = *(const loose_pair *)(b + 2);
    for (int i = 0; i < 4; i++) {
      double one = a[i * a_row + k];
      pair both = {one, one};
      sum[i][0] += both * left;
      sum[i][1] += both * right;
    }
  }
  for (int i = 0; i < 4; i++)
    for (int h = 0; h < 2; h++) *(loose_pair *)(c + i * c_row + 2 * h) = sum[i][h];
}

static void edge(double *c, int c_row, const double *a, int a_row, const double *b, int rows,
                 int columns, int depth) {
  for (int i = 0; i < rows; i++)
    for (int j = 0; j < columns; j++) {
      double sum = c[i * c_row + j];
      for (int k = 0; k < depth; k++) sum += a[i * a_row + k] * b[k * WIDE + j];
      c[i * c_row + j] = sum;
    }
}

/* c += sign * a b: rows by terms by columns; sign is 1 or -1. With lower only what lies on or below
 * the diagonal of c is sure to be done. packed: DEPTH * (columns + WIDE) numbers of scratch. */
static void accumulate(double *c, int c_row, const double *a, int a_row, view b, int rows,
                       int columns, int terms, double sign, int lower, double *packed) {
  for (int k0 = 0; k0 < terms; k0 += DEPTH) {
    int depth = terms - k0 < DEPTH ? terms - k0 : DEPTH;
    pack_columns(b, k0, depth, columns, sign, packed);
    for (int i = 0; i < rows; i += 4) {
      int high = rows - i < 4 ? rows - i : 4;
      int end = lower && i + 4 < columns ? i + 4 : columns;
      for (int j = 0; j < end; j += WIDE) {
        int wide = columns - j < WIDE ? columns - j : WIDE;
        const double *from = packed + j * depth;
        if (high == 4 && wide == WIDE)
          four_by_four(c + i * c_row + j, c_row, a + i * a_row + k0, a_row, from, depth);
        else
          edge(c + i * c_row + j, c_row, a + i * a_row + k0, a_row, from, high, wide, depth);
      }
    }
  }
}

static double root(double value) { return __builtin_sqrt(value); }

/* z[first..first+rows) of terms k0..k0+depth, WIDE_SINGLE rows side by side; rows that are left are 0. */
static void pack_rows(const float *z, int rows, int terms, int k0, int depth, float *packed) {
  for (int j = 0; j < rows; j += WIDE_SINGLE)
    for (int k = k0; k < k0 + depth; k++)
      for (int w = 0; w < WIDE_SINGLE; w++)
        *packed++ = j + w < rows ? z[(j + w) * terms + k] : 0.0f;
}

/* Products of four rows of a with eight packed ones. */
static void four_by_eight(const float *a, int a_row, const float *b, int depth,
                          float out[4][WIDE_SINGLE]) {
  four sum[4][2];
  for (int i = 0; i < 4; i++) sum[i][0] = sum[i][1] = (four){0.0f, 0.0f, 0.0f, 0.0f};
  for (int k = 0; k < depth; k++, b += WIDE_SINGLE) {
    four left = *(const loose_four *)b;
    four right = *(const loose_four *)(b + 4);
    for (int i = 0; i < 4; i++) {
      float single = a[i * a_row + k];
      four all = {single, single, single, single};
      sum[i][0] += all * left;
      sum[i][1] += all * right;
    }
  }
  for (int i = 0; i < 4; i++)
    for (int h = 0; h < 2; h++) *(loose_four *)(out[i] + 4 * h) = sum[i][h];
}

/* Lower half of z z', z being rows by columns, rows a multiple of 4; gram: rows by rows.
 * packed: DEPTH * (rows + WIDE_SINGLE) numbers of scratch. */
EXPORT("gram")
void port_gram(const float *z, int rows, int columns, double *gram, float *packed) {
  for (int at = 0; at < rows * rows; at++) gram[at] = 0.0;
  for (int k0 = 0; k0 < columns; k0 += DEPTH) {
    int depth = columns - k0 < DEPTH ? columns - k0 : DEPTH;
    pack_rows(z, rows, columns, k0, depth, packed);
    for (int i = 0; i < rows; i += 4)
      for (int j = 0; j < i + 4; j += WIDE_SINGLE) {
        float part[4][WIDE_SINGLE];
        four_by_eight(z + i * columns + k0, columns, packed + j * depth, depth, part);
        for (int r = 0; r < 4; r++)
          for (int w = 0; w < WIDE_SINGLE && j + w <= i + r; w++)
            gram[(i + r) * rows + j + w] += (double)part[r][w];
      }
  }
}

/* out = a b: rows by terms by columns. packed: DEPTH * (columns + WIDE) numbers of scratch. */
EXPORT("product")
void port_product(const double *a, int rows, int terms, const double *b, int columns, double *out,
                  double *packed) {
  for (int at = 0; at < rows * columns; at++) out[at] = 0.0;
  view plain = {b, columns, 1};
  accumulate(out, columns, a, terms, plain, rows, columns, terms, 1.0, 0, packed);
}

/* Columns first..first+wide of the factor, once all before them are taken off. What a column takes off
 * those to its right is taken off a row at a time: numbers side by side, each in the order of the
 * columns. */
static int factor_block(double *a, int n, int first, int wide) {
  static double across[BLOCK][BLOCK]; /* the block's factor, columns as rows */
  for (int i = first; i < n; i++) {
    double *row = a + i * n + first;
    int end = i - first < wide ? i - first : wide;
    for (int j = 0; j < end; j++) {
      double value = row[j] / across[j][j];
      row[j] = value;
      for (int c = j + 1; c < end; c++) row[c] -= value * across[j][c];
      if (end < wide) row[end] -= value * value;
    }
    if (end == wide) continue;
    if (!(row[end] > 0.0)) return 0;
    row[end] = root(row[end]);
    for (int j = 0; j <= end; j++) across[j][end] = row[j];
  }
  return 1;
}

/* Lower Cholesky factor in place of the lower half (Golub and Van Loan, Matrix Computations,
 * algorithm 4.2.2, in blocks). Returns 0 when the matrix is not positive definite. */
static int factorise(double *a, int n, double *packed) {
  for (int first = 0; first < n; first += BLOCK) {
    int wide = n - first < BLOCK ? n - first : BLOCK;
    double *below = a + first * n;
    view across = {below, 1, n};
    accumulate(below + first, n, below, n, across, n - first, wide, first, -1.0, 0, packed);
    if (!factor_block(a, n, first, wide)) return 0;
  }
  return 1;
}

/* Inverse of a factor, lower too. lower: n by n. */
static void invert_factor(const double *factor, int n, double *lower, double *packed) {
  for (int at = 0; at < n * n; at++) lower[at] = 0.0;
  for (int first = 0; first < n; first += BLOCK) {
    int high = n - first < BLOCK ? n - first : BLOCK;
    /* Nothing above row j stands in column j. */
    for (int j = 0; j < first; j += BLOCK) {
      view rest = {lower + j * n + j, n, 1};
      accumulate(lower + first * n + j, n, factor + first * n + j, n, rest, high, BLOCK,
                 first - j, -1.0, 0, packed);
    }
    for (int i = first; i < first + high; i++) {
      double *row = lower + i * n;
      row[i] = 1.0;
      for (int k = first; k < i; k++)
        for (int j = 0; j <= k; j++) row[j] -= factor[i * n + k] * lower[k * n + j];
      double scale = 1.0 / factor[i * n + i];
      for (int j = 0; j <= i; j++) row[j] *= scale;
    }
  }
}

/* Solves factor factor' x = b in place of b, for columns right-hand sides side by side. */
static void solve(const double *factor, int n, double *b, int columns) {
  for (int i = 0; i < n; i++) {
    for (int k = 0; k < i; k++)
      for (int c = 0; c < columns; c++) b[i * columns + c] -= factor[i * n + k] * b[k * columns + c];
    double scale = 1.0 / factor[i * n + i];
    for (int c = 0; c < columns; c++) b[i * columns + c] *= scale;
  }
  for (int i = n - 1; i >= 0; i--) {
    for (int k = i + 1; k < n; k++)
      for (int c = 0; c < columns; c++) b[i * columns + c] -= factor[k * n + i] * b[k * columns + c];
    double scale = 1.0 / factor[i * n + i];
    for (int c = 0; c < columns; c++) b[i * columns + c] *= scale;
  }
}

/* dual: lower' lower targets, all n by columns. between: scratch of the same size. */
static void dual_of(const double *lower, int n, const double *targets, int columns, double *between,
                    double *dual) {
  for (int at = 0; at < n * columns; at++) between[at] = dual[at] = 0.0;
  for (int i = 0; i < n; i++)
    for (int k = 0; k <= i; k++)
      for (int c = 0; c < columns; c++)
        between[i * columns + c] += lower[i * n + k] * targets[k * columns + c];
  for (int k = 0; k < n; k++)
    for (int i = 0; i <= k; i++)
      for (int c = 0; c < columns; c++)
        dual[i * columns + c] += lower[k * n + i] * between[k * columns + c];
}

/* Block of the inverse for rows first..first+size, its lower half. flat: size * n of scratch. */
static void inverse_block(const double *lower, int n, int first, int size, double *block,
                          double *flat, double *packed) {
  int terms = n - first;
  view below = {lower + first * n + first, n, 1};
  for (int i = 0; i < size; i++)
    for (int k = 0; k < terms; k++) flat[i * terms + k] = lower[(first + k) * n + first + i];
  for (int at = 0; at < size * size; at++) block[at] = 0.0;
  accumulate(block, size, flat, terms, below, size, size, terms, 1.0, 1, packed);
}

/* Regression with a symmetric matrix plus add everywhere plus strength on its diagonal, of which the
 * lower half is read and written over: dual receives its inverse times the targets (n by columns), residuals what every group of
 * rows, sizes[0..groups) one after the other, misses when it is left out.
 * scratch: n * n + n * columns + most * (n + most) + DEPTH * (n + WIDE) numbers, most being the largest
 * group. Returns 0 when the matrix is not positive definite. */
EXPORT("leave_out")
int port_leave_out(double *matrix, int n, double add, double strength, const double *targets, int columns, const int *sizes,
                   int groups, int most, double *dual, double *residuals, double *scratch) {
  double *lower = scratch;
  double *between = lower + n * n;
  double *block = between + n * columns;
  double *flat = block + most * most;
  double *packed = flat + most * n;
  for (int at = 0; at < n * n; at++) matrix[at] += add;
  for (int i = 0; i < n; i++) matrix[i * n + i] += strength;
  if (!factorise(matrix, n, packed)) return 0;
  invert_factor(matrix, n, lower, packed);
  dual_of(lower, n, targets, columns, between, dual);
  for (int at = 0; at < n * columns; at++) residuals[at] = dual[at];
  for (int g = 0, first = 0; g < groups; first += sizes[g++]) {
    inverse_block(lower, n, first, sizes[g], block, flat, packed);
    if (!factorise(block, sizes[g], packed)) return 0;
    solve(block, sizes[g], residuals + first * columns, columns);
  }
  return 1;
}
