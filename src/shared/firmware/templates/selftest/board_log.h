/*
 * Board log: the text that a self-test prints and the app compares with the phone's answers.
 *   movewright 1
 *   model <SHA-256 of the model bytes>
 *   vector <name>      for each vector, with its event log behind it
 *   done
 * Lines that begin with '#' say something to people.
 */
#ifndef BOARD_LOG_H
#define BOARD_LOG_H

#define BOARD_LOG_FIRST "movewright 1\n"
#define BOARD_LOG_MODEL "model "
#define BOARD_LOG_VECTOR "vector "
#define BOARD_LOG_LAST "done\n"

#endif
