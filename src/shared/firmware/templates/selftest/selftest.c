/*
 * Self-test on a desk: runs vectors through the recogniser and compares its event log, byte for
 * byte, with the one the phone wrote.
 *   run-vectors vectors/NN-name.in ...
 * prints what a board prints (selftest_log.h), and "#" lines between: "# ok" or the first line
 * that differs. Exit status: 0 all agree, 1 one or more differ, 2 a file cannot be read.
 */
#include <stdio.h>
#include <string.h>

#include "selftest_log.h"
#include "vector_run.h"

/* Of the vector that runs. */
static FILE *expected_log;
static int differs;

/* Prints a line and compares it with the next one expected. */
static void say(const char *line) {
  char expected[EVENT_LOG_LINE];
  fputs(line, stdout);
  if (fgets(expected, sizeof expected, expected_log) == NULL) strcpy(expected, "(nothing)\n");
  if (strcmp(line, expected) == 0) return;
  if (differs == 0) printf("# expected %s# found    %s", expected, line);
  differs++;
}

static int run_lines(const char *name, FILE *input) {
  static vector_run run;
  char line[VECTOR_LINE];
  unsigned long number = 0;
  vector_begin(&run, say);
  while (fgets(line, sizeof line, input) != NULL) {
    number++;
    if (vector_line(&run, line)) continue;
    fprintf(stderr, "%s, line %lu cannot be understood: %s", name, number, line);
    return 2;
  }
  vector_end(&run);
  if (fgets(line, sizeof line, expected_log) != NULL) {
    printf("# expected more: %s", line);
    differs++;
  }
  return differs ? 1 : 0;
}

/* The vector's name: its file without folder and ending; 0 when it has another ending. */
static int stem(const char *path, char name[512]) {
  const char *slash = strrchr(path, '/');
  const char *file = slash != NULL ? slash + 1 : path;
  size_t length = strlen(file);
  if (length < 4 || strlen(path) >= 500 || strcmp(file + length - 3, ".in") != 0) return 0;
  memcpy(name, file, length - 3);
  name[length - 3] = '\0';
  return 1;
}

/* The vector's log lies beside it, with .log for .in. */
static FILE *open_log(const char *path) {
  char name[512];
  size_t length = strlen(path);
  memcpy(name, path, length - 2);
  strcpy(name + length - 2, "log");
  return fopen(name, "r");
}

static int run_vector(const char *path) {
  char name[512];
  FILE *input;
  int result = 2;
  if (!stem(path, name)) {
    fprintf(stderr, "%s is not a vector: its name must end in .in\n", path);
    return 2;
  }
  input = fopen(path, "r");
  expected_log = open_log(path);
  differs = 0;
  printf(SELFTEST_LOG_VECTOR "%s\n", name);
  if (input == NULL || expected_log == NULL)
    fprintf(stderr, "%s or its .log cannot be opened\n", path);
  else
    result = run_lines(path, input);
  if (input != NULL) fclose(input);
  if (expected_log != NULL) fclose(expected_log);
  printf("# %s\n", result == 0 ? "ok" : "differs");
  return result;
}

int main(int count, char **paths) {
  int worst = count > 1 ? 0 : 2;
  int agreed = 0;
  printf(SELFTEST_LOG_FIRST SELFTEST_LOG_MODEL MODEL_SHA256 "\n");
  for (int i = 1; i < count; i++) {
    int result = run_vector(paths[i]);
    if (result == 0) agreed++;
    if (result > worst) worst = result;
  }
  printf(SELFTEST_LOG_LAST "# %d of %d vectors agree with the phone\n", agreed, count - 1);
  return worst;
}
