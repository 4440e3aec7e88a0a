#include "board-model.h"
#include <string.h>

const char *const signal_names[SIGNAL_COUNT] = {"shiftClock", "dataOut", "latch",
                                                "load",       "dataIn",  "outputEnable", "codeIn"};

#define MAX_PAIRS 4096
struct pair {
  int a, b;
};

static struct {
  driven_level driven;
  enum { NO_BOARD, CHAIN, DIRECT } kind;
  int pins[SIGNAL_COUNT];
  int level[SIGNAL_COUNT];
  int output_bits, input_bits, code_bits, line_count;
  int cut_output, cut_input, cut_input_level, cut_tie;
  unsigned char output_shift[MAX_LINES], output_latch[MAX_LINES];
  unsigned char input_shift[MAX_LINES], code_shift[MAX_LINES], code_strapped[MAX_LINES];
  int bare[MAX_LINES];
  enum line_fault fault[MAX_LINES];
  struct pair joins[MAX_PAIRS], ties[MAX_PAIRS];
  int join_count, tie_count;
  int node[MAX_LINES];
  unsigned char pulls[MAX_LINES], was_high[MAX_LINES], low_node[MAX_LINES];
  long pull_events, driven_high_events;
} board;

static int is_line(int line) { return line >= 0 && line < board.line_count; }

/* Levels at rest of pins that nobody drives: the board pulls output enable and load up, the rest lie low. */
static int idle_level(int signal) { return signal == OUTPUT_ENABLE || signal == LOAD; }

static int signal_level(int signal) {
  int bcm = board.pins[signal];
  if (bcm < 0) return signal == OUTPUT_ENABLE ? 0 : idle_level(signal);
  int driven = board.driven(bcm);
  return driven < 0 ? idle_level(signal) : driven;
}

static int node_of(int line) {
  while (board.node[line] != line) line = board.node[line];
  return line;
}

static void find_nodes(void) {
  for (int i = 0; i < board.line_count; i++) board.node[i] = i;
  for (int i = 0; i < board.join_count; i++) {
    int a = node_of(board.joins[i].a), b = node_of(board.joins[i].b);
    if (a != b) board.node[a > b ? a : b] = a > b ? b : a;
  }
}

static int is_asked_to_pull(int line) {
  if (board.kind == CHAIN) return board.level[OUTPUT_ENABLE] == 0 && board.output_latch[line] == 0;
  return board.driven(board.bare[line]) == 0;
}

/* Outputs through their diodes onto the lines: a node is low when any of its lines is pulled. */
static void settle_lines(void) {
  unsigned char pulls[MAX_LINES] = {0};
  for (int i = 0; i < board.line_count; i++) pulls[i] = is_asked_to_pull(i);
  for (int i = 0; i < board.tie_count; i++) {
    int a = board.ties[i].a, b = board.ties[i].b;
    if (is_asked_to_pull(a) || is_asked_to_pull(b)) pulls[a] = pulls[b] = 1;
  }
  memset(board.low_node, 0, sizeof board.low_node);
  for (int i = 0; i < board.line_count; i++) {
    if (board.fault[i] == DEAD_OUTPUT) pulls[i] = 0;
    if (pulls[i] && !board.pulls[i]) board.pull_events++;
    board.pulls[i] = pulls[i];
    if (pulls[i]) board.low_node[node_of(i)] = 1;
    int is_high = board.kind == DIRECT && board.driven(board.bare[i]) == 1;
    if (is_high && !board.was_high[i]) board.driven_high_events++;
    board.was_high[i] = is_high;
  }
  for (int i = 0; i < board.line_count; i++)
    if (board.fault[i] == STUCK_HIGH) board.low_node[node_of(i)] = 0;
  for (int i = 0; i < board.line_count; i++)
    if (board.fault[i] == STUCK_LOW) board.low_node[node_of(i)] = 1;
}

static int line_level(int line) {
  if (!is_line(line) || board.fault[line] == DEAD_INPUT) return 1;
  return !board.low_node[node_of(line)];
}

static void shift_in(unsigned char *bits, int count, int serial, int cut_chip, int cut_level) {
  if (count == 0) return;
  memmove(bits + 1, bits, (size_t)count - 1);
  bits[0] = (unsigned char)serial;
  if (cut_chip >= 0 && 8 * cut_chip < count) bits[8 * cut_chip] = (unsigned char)cut_level;
}

/* 165: while SH/LD is low the inputs stand in the register whatever the clock does. */
static void take_inputs(void) {
  for (int i = 0; i < board.input_bits; i++) board.input_shift[i] = (unsigned char)line_level(i);
  for (int i = 0; i < board.code_bits; i++) board.code_shift[i] = !board.code_strapped[i];
}

void board_settle(void) {
  if (board.kind == NO_BOARD) return;
  if (board.kind == CHAIN) {
    int before[SIGNAL_COUNT];
    memcpy(before, board.level, sizeof before);
    for (int s = 0; s < SIGNAL_COUNT; s++) board.level[s] = signal_level(s);
    /* Both chips shift on the rising edge; what crosses from chip to chip is what stood there before it. */
    if (!before[SHIFT_CLOCK] && board.level[SHIFT_CLOCK]) {
      int round = board.cut_tie ? 0 : board.output_shift[board.output_bits - 1];
      shift_in(board.output_shift, board.output_bits, board.level[DATA_OUT], board.cut_output, 0);
      if (board.level[LOAD]) {
        shift_in(board.input_shift, board.input_bits, round, board.cut_input, board.cut_input_level);
        shift_in(board.code_shift, board.code_bits, 1, -1, 0);
      }
    }
    if (!before[LATCH] && board.level[LATCH])
      memcpy(board.output_latch, board.output_shift, sizeof board.output_latch);
  }
  settle_lines();
  if (board.kind == CHAIN && !board.level[LOAD]) take_inputs();
}

int board_level(int bcm) {
  if (board.kind == CHAIN) {
    if (bcm == board.pins[DATA_IN]) return board.input_shift[board.input_bits - 1];
    if (bcm == board.pins[CODE_IN] && board.code_bits > 0) return board.code_shift[board.code_bits - 1];
    for (int s = 0; s < SIGNAL_COUNT; s++)
      if (bcm == board.pins[s]) return idle_level(s);
  }
  if (board.kind == DIRECT)
    for (int i = 0; i < board.line_count; i++)
      if (board.bare[i] == bcm) return line_level(i);
  return 0;
}

void board_clear(driven_level driven) {
  memset(&board, 0, sizeof board);
  board.driven = driven;
  board.cut_output = board.cut_input = -1;
}

void board_chain(int output_chips, int input_chips, int code_chips, const int pins[SIGNAL_COUNT]) {
  board.kind = CHAIN;
  memcpy(board.pins, pins, sizeof board.pins);
  board.output_bits = 8 * output_chips;
  board.input_bits = 8 * input_chips;
  board.code_bits = 8 * code_chips;
  board.line_count = board.output_bits < board.input_bits ? board.output_bits : board.input_bits;
  /* The data sheet promises nothing of the registers at power-up: an uneven mix of both levels. */
  for (int i = 0; i < MAX_LINES; i++) board.output_shift[i] = board.output_latch[i] = (i * 7 / 3) % 2;
  for (int s = 0; s < SIGNAL_COUNT; s++) board.level[s] = signal_level(s);
  find_nodes();
  board_settle();
  board.pull_events = 0;
}

void board_direct(const int *bcm, int count) {
  board.kind = DIRECT;
  board.line_count = count;
  memcpy(board.bare, bcm, (size_t)count * sizeof *bcm);
  find_nodes();
  board_settle();
}

static int add_pair(struct pair *pairs, int *count, int a, int b) {
  if (!is_line(a) || !is_line(b) || *count == MAX_PAIRS) return 0;
  pairs[(*count)++] = (struct pair){a, b};
  return 1;
}

int board_join(int a, int b) {
  int done = add_pair(board.joins, &board.join_count, a, b);
  find_nodes();
  board_settle();
  return done;
}

int board_part(int a, int b) {
  for (int i = 0; i < board.join_count; i++) {
    struct pair p = board.joins[i];
    if (!((p.a == a && p.b == b) || (p.a == b && p.b == a))) continue;
    board.joins[i] = board.joins[--board.join_count];
    find_nodes();
    board_settle();
    return 1;
  }
  return 0;
}

int board_fault(int line, enum line_fault fault) {
  if (!is_line(line)) return 0;
  board.fault[line] = fault;
  board_settle();
  return 1;
}

int board_tie_outputs(int a, int b) {
  int done = add_pair(board.ties, &board.tie_count, a, b);
  board_settle();
  return done;
}

int board_code(int contact, int is_strapped) {
  if (contact < 0 || contact >= board.code_bits) return 0;
  board.code_strapped[contact] = is_strapped != 0;
  board_settle();
  return 1;
}

int board_cut_output_chain(int chip) {
  if (chip < 0 || 8 * chip >= board.output_bits) return 0;
  board.cut_output = chip;
  return 1;
}

int board_cut_input_chain(int chip, int level) {
  if (chip < 0 || 8 * chip >= board.input_bits) return 0;
  board.cut_input = chip;
  board.cut_input_level = level;
  return 1;
}

void board_cut_tie(void) { board.cut_tie = 1; }
int board_line_count(void) { return board.line_count; }
int board_pulls(int line) { return is_line(line) && board.pulls[line]; }
long board_pull_events(void) { return board.pull_events; }
long board_driven_high_events(void) { return board.driven_high_events; }
