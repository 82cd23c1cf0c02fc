/*
 * Self-test on a board. Write the three functions below for your serial port, then call one of
 *   selftest_packed()   vectors from flash: make build/packed_vectors.c on the desk and link it
 *   selftest_serial()   vectors over the serial line, for parts whose flash is too small for them
 * from your main(). Either prints a self-test log (selftest_log.h); paste it into the app.
 */
#ifndef SELFTEST_BOARD_H
#define SELFTEST_BOARD_H

#include <stdint.h>

/* Sends a character; waits while the port is busy. */
void port_put(char character);

/* Waits for the next character. Only selftest_serial() calls it. */
char port_get(void);

/* Called once a sample: feed the watchdog here. */
void port_alive(void);

/* Runs all vectors of build/packed_vectors.c. */
void selftest_packed(void);

/*
 * Runs vectors as they come: the lines of vectors/NN-name.in, with a line "vector NN-name" before
 * each and a line "done" after the last (make build/serial_vectors.txt). A '>' says that the next
 * line may be sent: a board without an input buffer loses what comes earlier. Returns after "done".
 */
void selftest_serial(void);

#endif
