/*
 * A mock board behind the pins: 74HC595 and 74HC165 chains, or bare pins, with pull-ups, leads, codes and faults.
 * Chip behaviour after the function tables of the data sheets (Texas Instruments SCLS041, SN74HC595; SCLS116,
 * SN74HC165), written down from memory.
 */
#ifndef BOARD_MODEL_H
#define BOARD_MODEL_H

#define MAX_LINES 1024
#define PIN_COUNT 54

enum signal { SHIFT_CLOCK, DATA_OUT, LATCH, LOAD, DATA_IN, OUTPUT_ENABLE, CODE_IN, SIGNAL_COUNT };
extern const char *const signal_names[SIGNAL_COUNT];

enum line_fault { NO_FAULT, STUCK_LOW, STUCK_HIGH, DEAD_OUTPUT, DEAD_INPUT };

/* Level that a pin's owner drives, or -1 where the pin is an input. */
typedef int (*driven_level)(int bcm);

/* Takes every lead, code, fault and chip away. */
void board_clear(driven_level driven);
/* A board of so many 595s, 165s and code 165s; pins are BCM numbers, -1 for one that is not there. */
void board_chain(int output_chips, int input_chips, int code_chips, const int pins[SIGNAL_COUNT]);
/* A board whose line i is pin bcm[i]. */
void board_direct(const int *bcm, int count);

int board_join(int a, int b);
int board_part(int a, int b);
int board_fault(int line, enum line_fault fault);
int board_tie_outputs(int a, int b);
int board_code(int contact, int is_strapped);
/* Cuts the wire into the serial input of an output or input chip, or the tie (then chip is ignored). */
int board_cut_output_chain(int chip);
/* What stands behind the cut reads as the level that the open input drifts to. */
int board_cut_input_chain(int chip, int level);
void board_cut_tie(void);

/* To be called after any pin changed: edges reach the chips, levels reach the lines. */
void board_settle(void);
/* Level at a pin that is an input: what the board puts there, or its pull. */
int board_level(int bcm);

int board_line_count(void);
/* Whether the output of a line pulls now. */
int board_pulls(int line);
/* How often any line began to be pulled, and how often a bare line was driven high. */
long board_pull_events(void);
long board_driven_high_events(void);
#endif
