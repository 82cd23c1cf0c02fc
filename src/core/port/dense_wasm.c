/*
 * Dense linear algebra for training, beside the core in the host's module and no part of it: nothing
 * here is exported to a board. Every sum runs over its terms in order, one element of the result in
 * one lane, so builds with and without -msimd128 give the same bits.
 */
#include <stdint.h>

#define EXPORT(name) __attribute__((export_name(name)))

typedef double pair __attribute__((vector_size(16)));
/* The same wherever it lies. */
typedef double loose_pair __attribute__((vector_size(16), aligned(8)));

/* Terms whose part of b is packed at a time; columns beside each other in it; rows of a block. */
#define DEPTH 256
#define WIDE 4
#define BLOCK 64

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

/* Lower half of start + z z', z being rows by columns; gram: rows by rows. */
EXPORT("gram")
void port_gram(const double *z, int rows, int columns, double start, double *gram,
               double *packed) {
  for (int i = 0; i < rows; i++)
    for (int j = 0; j < rows; j++) gram[i * rows + j] = start;
  view across = {z, 1, columns};
  accumulate(gram, rows, z, columns, across, rows, rows, columns, 1.0, 1, packed);
}

/* out = a b: rows by terms by columns. packed: DEPTH * (columns + WIDE) numbers of scratch. */
EXPORT("product")
void port_product(const double *a, int rows, int terms, const double *b, int columns, double *out,
                  double *packed) {
  for (int at = 0; at < rows * columns; at++) out[at] = 0.0;
  view plain = {b, columns, 1};
  accumulate(out, columns, a, terms, plain, rows, columns, terms, 1.0, 0, packed);
}

/* Columns first..first+wide of the factor, once all before them are taken off. */
static int factor_block(double *a, int n, int first, int wide) {
  for (int i = first; i < n; i++) {
    double *row = a + i * n;
    for (int j = first; j < first + wide && j <= i; j++) {
      const double *other = a + j * n;
      double sum = row[j];
      for (int k = first; k < j; k++) sum -= row[k] * other[k];
      if (i != j)
        row[j] = sum / other[j];
      else if (sum > 0.0)
        row[j] = root(sum);
      else
        return 0;
    }
  }
  return 1;
}

/* Lower Cholesky factor in place of the lower half (Golub and Van Loan, Matrix Computations,
 * algorithm 4.2.2, in blocks). Returns 0 when the matrix is not positive definite. */
EXPORT("cholesky")
int port_cholesky(double *a, int n, double *packed) {
  for (int first = 0; first < n; first += BLOCK) {
    int wide = n - first < BLOCK ? n - first : BLOCK;
    double *below = a + first * n;
    view across = {below, 1, n};
    accumulate(below + first, n, below, n, across, n - first, wide, first, -1.0, 0, packed);
    if (!factor_block(a, n, first, wide)) return 0;
  }
  return 1;
}

/* Inverse of the matrix whose factor is given, all of it. inverse, lower: n by n. */
EXPORT("inverse")
void port_inverse(const double *factor, int n, double *lower, double *inverse, double *packed) {
  for (int at = 0; at < n * n; at++) lower[at] = inverse[at] = 0.0;
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
  /* Columns of lower side by side, from the first that is not all nought. */
  double *flat = packed + DEPTH * (n + WIDE);
  for (int first = 0; first < n; first += BLOCK) {
    int high = n - first < BLOCK ? n - first : BLOCK;
    for (int i = 0; i < high; i++)
      for (int k = first; k < n; k++) flat[i * n + k - first] = lower[k * n + first + i];
    view below = {lower + first * n, n, 1};
    accumulate(inverse + first * n, n, flat, n, below, high, first + high, n - first, 1.0, 0,
               packed);
  }
  for (int i = 0; i < n; i++)
    for (int j = 0; j < i; j++) inverse[j * n + i] = inverse[i * n + j];
}
