/*
 * Self-test log: the text that a self-test prints and the app compares with the phone's answers.
 *   movewright 1
 *   model <SHA-256 of the model bytes>
 *   vector <name>      for each vector, with its event log behind it
 *   done
 * Lines that begin with '#' say something to people.
 */
#ifndef SELFTEST_LOG_H
#define SELFTEST_LOG_H

#define SELFTEST_LOG_FIRST "movewright 1\n"
#define SELFTEST_LOG_MODEL "model "
#define SELFTEST_LOG_VECTOR "vector "
#define SELFTEST_LOG_LAST "done\n"

#endif
