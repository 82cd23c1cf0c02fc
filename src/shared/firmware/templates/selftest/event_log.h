/* Event log: what a recogniser said, as lines of text that are the same on every machine. */
#ifndef EVENT_LOG_H
#define EVENT_LOG_H

#include "movewright.h"
#include "mvw_teach.h"

/* Room for any line, its line end and the closing zero: the longest has 91. */
#define EVENT_LOG_LINE 128

/* Each writes one line. Gestures are numbers in the order of the model, '-' means none:
 *   <what> <status>                                    what: "init", "read" or "teach"
 *   event <start> <end> <gesture|reject> <nearest> <reason> <roll> <distance> <threshold>
 *         <runner-up> <runner-up distance>                                (on one line)
 *   taught <more|done|cut|unlike|near> <movements> <nearest other> <its distance> <spread> <threshold>
 *   end <samples>                                                                      */
void event_log_status(char line[EVENT_LOG_LINE], const char *what, int status);
void event_log_event(char line[EVENT_LOG_LINE], const mvw_event *event);
void event_log_taught(char line[EVENT_LOG_LINE], int status, const mvw_teach *teach);
void event_log_end(char line[EVENT_LOG_LINE], uint32_t samples);

#endif
