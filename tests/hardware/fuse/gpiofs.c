/*
 * The kernel's /sys/class/gpio, as far as a program can tell, with a mock board behind its pins.
 * Behaviour after drivers/gpio/gpiolib-sysfs.c of Linux 6.1 and Documentation/admin-guide/gpio/sysfs.rst, from
 * memory: export of a pin that is held gives EBUSY, of one that is not there EINVAL; a value written to an input
 * EPERM; `high` and `low` set direction and level in one step, `out` drives 0; edges on an output EIO.
 * The hidden file .control at the top takes commands, one a line, and reads back as JSON.
 */
#define FUSE_USE_VERSION 31
#include "board-model.h"
#include <errno.h>
#include <fuse3/fuse.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#define MAX_CHIPS 8
#define CONTROL "/.control"

static struct {
  char label[64];
  int base, count;
} chips[MAX_CHIPS];
static int chip_count;

struct pin {
  int is_exported, is_held, is_direction_locked, is_out, level, edge, active_low;
  double exported_at_ms;
  long value_reads, value_writes, direction_writes;
};
static struct pin pins[PIN_COUNT];
static const char *const edge_names[] = {"none", "rising", "falling", "both"};

static struct {
  int uid, gid, mode;
  double udev_ms;
} owner = {0, 0, 0644, 0};
static long open_count;
static char report[1 << 16];

static double now_ms(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static int driven(int bcm) { return bcm >= 0 && bcm < PIN_COUNT && pins[bcm].is_out ? pins[bcm].level : -1; }

/* ---- paths ---- */

enum node_kind { NO_NODE, TOP, EXPORT, UNEXPORT, CONTROL_FILE, CHIP, CHIP_FILE, PIN, PIN_FILE };
struct node {
  enum node_kind kind;
  int index;
  char file[32];
};
static const char *const chip_files[] = {"base", "label", "ngpio", NULL};
static const char *const pin_files[] = {"active_low", "direction", "edge", "value", NULL};

static int is_one_of(const char *name, const char *const *names) {
  for (; *names; names++)
    if (!strcmp(name, *names)) return 1;
  return 0;
}

/* The 40-pin header's chip is the first; only its pins can be had. */
static struct node find(const char *path) {
  struct node node = {NO_NODE, -1, ""};
  int number = -1, end = 0;
  if (!strcmp(path, "/")) node.kind = TOP;
  else if (!strcmp(path, "/export")) node.kind = EXPORT;
  else if (!strcmp(path, "/unexport")) node.kind = UNEXPORT;
  else if (!strcmp(path, CONTROL)) node.kind = CONTROL_FILE;
  else if (sscanf(path, "/gpiochip%d%n", &number, &end) == 1) {
    for (int i = 0; i < chip_count; i++)
      if (chips[i].base == number) node.index = i;
    if (node.index < 0) return node;
    if (!path[end]) node.kind = CHIP;
    else if (path[end] == '/' && is_one_of(path + end + 1, chip_files)) node.kind = CHIP_FILE;
  } else if (sscanf(path, "/gpio%d%n", &number, &end) == 1 && chip_count > 0) {
    int bcm = number - chips[0].base;
    if (bcm < 0 || bcm >= PIN_COUNT || !pins[bcm].is_exported) return node;
    node.index = bcm;
    if (!path[end]) node.kind = PIN;
    else if (path[end] == '/' && is_one_of(path + end + 1, pin_files)) node.kind = PIN_FILE;
  }
  if (node.kind == CHIP_FILE || node.kind == PIN_FILE)
    snprintf(node.file, sizeof node.file, "%s", path + end + 1);
  return node;
}

static int fs_getattr(const char *path, struct stat *st, struct fuse_file_info *fi) {
  (void)fi;
  struct node node = find(path);
  if (node.kind == NO_NODE) return -ENOENT;
  memset(st, 0, sizeof *st);
  int is_folder = node.kind == TOP || node.kind == CHIP || node.kind == PIN;
  /* A fresh pin belongs to root until udev has been round. */
  int is_fresh = node.index >= 0 && (node.kind == PIN || node.kind == PIN_FILE) &&
                 now_ms() - pins[node.index].exported_at_ms < owner.udev_ms;
  int mode = is_fresh ? 0644 : owner.mode;
  if (node.kind == PIN_FILE && pins[node.index].is_direction_locked && !strcmp(node.file, "direction")) mode = 0644;
  if (node.kind == CHIP_FILE) mode = 0444;
  if (node.kind == CONTROL_FILE) mode = 0600;
  if ((node.kind == EXPORT || node.kind == UNEXPORT) && mode == 0644) mode = 0200;
  st->st_uid = is_fresh ? 0 : (uid_t)owner.uid;
  st->st_gid = is_fresh ? 0 : (gid_t)owner.gid;
  st->st_mode = is_folder ? S_IFDIR | 0755 : S_IFREG | (mode_t)mode;
  st->st_nlink = is_folder ? 2 : 1;
  st->st_size = is_folder ? 0 : 4096;
  return 0;
}

static int fs_readdir(const char *path, void *buffer, fuse_fill_dir_t fill, off_t offset, struct fuse_file_info *fi,
                      enum fuse_readdir_flags flags) {
  (void)offset, (void)fi, (void)flags;
  struct node node = find(path);
  char name[32];
  fill(buffer, ".", NULL, 0, 0);
  fill(buffer, "..", NULL, 0, 0);
  if (node.kind == TOP) {
    fill(buffer, "export", NULL, 0, 0);
    fill(buffer, "unexport", NULL, 0, 0);
    for (int i = chip_count - 1; i >= 0; i--) {
      snprintf(name, sizeof name, "gpiochip%d", chips[i].base);
      fill(buffer, name, NULL, 0, 0);
    }
    for (int i = 0; i < PIN_COUNT; i++) {
      if (!pins[i].is_exported) continue;
      snprintf(name, sizeof name, "gpio%d", chips[0].base + i);
      fill(buffer, name, NULL, 0, 0);
    }
    return 0;
  }
  const char *const *files = node.kind == CHIP ? chip_files : node.kind == PIN ? pin_files : NULL;
  if (!files) return -ENOTDIR;
  for (; *files; files++) fill(buffer, *files, NULL, 0, 0);
  return 0;
}

static int fs_open(const char *path, struct fuse_file_info *fi) {
  if (find(path).kind == NO_NODE) return -ENOENT;
  open_count++;
  fi->direct_io = 1;
  return 0;
}

/* ---- reading ---- */

static int put(char *at, int value) { return sprintf(at, "%d\n", value); }

static int pin_level(int bcm) { return pins[bcm].is_out ? pins[bcm].level : board_level(bcm); }

static void write_report(void) {
  char *at = report;
  long reads = 0, writes = 0, directions = 0;
  at += sprintf(at, "{\"pins\":{");
  for (int i = 0, first = 1; i < PIN_COUNT; i++) {
    struct pin *p = &pins[i];
    reads += p->value_reads, writes += p->value_writes, directions += p->direction_writes;
    if (!p->is_exported && !p->value_reads && !p->value_writes && !p->is_out) continue;
    at += sprintf(at, "%s\"%d\":{\"isExported\":%s,\"isOut\":%s,\"level\":%d,\"reads\":%ld,\"writes\":%ld}", first ? "" : ",",
                  i, p->is_exported ? "true" : "false", p->is_out ? "true" : "false", pin_level(i), p->value_reads,
                  p->value_writes);
    first = 0;
  }
  at += sprintf(at, "},\"reads\":%ld,\"writes\":%ld,\"directionWrites\":%ld,\"opens\":%ld,\"pulled\":[", reads, writes,
                directions, open_count);
  for (int i = 0, first = 1; i < board_line_count(); i++) {
    if (!board_pulls(i)) continue;
    at += sprintf(at, "%s%d", first ? "" : ",", i);
    first = 0;
  }
  sprintf(at, "],\"pullEvents\":%ld,\"drivenHighEvents\":%ld}\n", board_pull_events(), board_driven_high_events());
}

static int fs_read(const char *path, char *buffer, size_t size, off_t offset, struct fuse_file_info *fi) {
  (void)fi;
  struct node node = find(path);
  char small[80];
  const char *text = small;
  if (node.kind == CHIP_FILE) {
    if (!strcmp(node.file, "label")) snprintf(small, sizeof small, "%s\n", chips[node.index].label);
    else put(small, !strcmp(node.file, "base") ? chips[node.index].base : chips[node.index].count);
  } else if (node.kind == PIN_FILE) {
    struct pin *p = &pins[node.index];
    if (!strcmp(node.file, "value")) {
      if (offset == 0) p->value_reads++;
      put(small, pin_level(node.index) ^ p->active_low);
    } else if (!strcmp(node.file, "direction")) snprintf(small, sizeof small, "%s\n", p->is_out ? "out" : "in");
    else if (!strcmp(node.file, "edge")) snprintf(small, sizeof small, "%s\n", edge_names[p->edge]);
    else put(small, p->active_low);
  } else if (node.kind == CONTROL_FILE) {
    if (offset == 0) write_report();
    text = report;
  } else return node.kind == NO_NODE ? -ENOENT : -EACCES;
  size_t length = strlen(text);
  if ((size_t)offset >= length) return 0;
  size_t count = length - (size_t)offset < size ? length - (size_t)offset : size;
  memcpy(buffer, text + offset, count);
  return (int)count;
}

/* ---- writing ---- */

static int parse_number(const char *text, int *number) {
  char *end;
  long value = strtol(text, &end, 0);
  if (end == text || (*end && strcmp(end, "\n"))) return 0;
  *number = (int)value;
  return 1;
}

static void release_pin(int bcm) {
  struct pin *p = &pins[bcm];
  p->is_exported = p->is_out = p->edge = p->active_low = 0;
}

static int do_export(const char *text, int is_export) {
  int number;
  if (!parse_number(text, &number) || chip_count == 0) return -EINVAL;
  int bcm = number - chips[0].base;
  if (bcm < 0 || bcm >= PIN_COUNT || bcm >= chips[0].count) return -EINVAL;
  if (!is_export) {
    if (!pins[bcm].is_exported) return -EINVAL;
    /* The pin controller makes a freed pin an input again. */
    release_pin(bcm);
    board_settle();
    return 0;
  }
  if (pins[bcm].is_exported || pins[bcm].is_held) return -EBUSY;
  pins[bcm].is_exported = 1;
  pins[bcm].exported_at_ms = now_ms();
  return 0;
}

static int set_direction(struct pin *p, const char *word) {
  int is_out = strcmp(word, "in") != 0;
  if (is_out && strcmp(word, "out") && strcmp(word, "low") && strcmp(word, "high")) return -EINVAL;
  if (is_out && p->edge) return -EIO;
  p->direction_writes++;
  p->is_out = is_out;
  if (is_out) p->level = !strcmp(word, "high");
  board_settle();
  return 0;
}

static int set_edge(struct pin *p, const char *word) {
  for (int i = 0; i < 4; i++) {
    if (strcmp(word, edge_names[i])) continue;
    if (i > 0 && p->is_out) return -EIO;
    p->edge = i;
    return 0;
  }
  return -EINVAL;
}

static int write_pin(struct node node, const char *text) {
  struct pin *p = &pins[node.index];
  char word[16] = "";
  int number;
  if (!strcmp(node.file, "value")) {
    if (!p->is_out) return -EPERM;
    if (!parse_number(text, &number)) return -EINVAL;
    p->value_writes++;
    p->level = (number != 0) ^ p->active_low;
    board_settle();
    return 0;
  }
  if (!strcmp(node.file, "active_low")) {
    if (!parse_number(text, &number)) return -EINVAL;
    p->active_low = number != 0;
    return 0;
  }
  snprintf(word, sizeof word, "%s", text);
  word[strcspn(word, "\n")] = 0;
  return strcmp(node.file, "edge") ? set_direction(p, word) : set_edge(p, word);
}

static void clear_counts(void) {
  for (int i = 0; i < PIN_COUNT; i++) pins[i].value_reads = pins[i].value_writes = pins[i].direction_writes = 0;
  open_count = 0;
}

static int parse_list(char *text, int *numbers, int most) {
  int count = 0;
  for (char *word = strtok(text, " "); word && count < most; word = strtok(NULL, " ")) numbers[count++] = atoi(word);
  return count;
}

/* Commands: see the switchboard below; a number of a pin is a BCM number, -1 for none. */
static int control(char *line) {
  int n[64] = {0};
  char word[64];
  int used = 0;
  if (sscanf(line, "%63s %n", word, &used) != 1) return 1;
  char *rest = line + used;
  if (!strcmp(word, "chip")) {
    if (chip_count == MAX_CHIPS) return 0;
    int fields = sscanf(rest, "%63s %d %d", chips[chip_count].label, &chips[chip_count].base, &chips[chip_count].count);
    chip_count++;
    return fields == 3;
  }
  int count = parse_list(rest, n, 64);
  if (!strcmp(word, "reset")) {
    memset(pins, 0, sizeof pins);
    chip_count = 0;
    owner.uid = owner.gid = 0, owner.mode = 0644, owner.udev_ms = 0;
    clear_counts();
    board_clear(driven);
    return 1;
  }
  if (!strcmp(word, "owner")) {
    owner.uid = n[0], owner.gid = n[1], owner.mode = n[2], owner.udev_ms = n[3];
    return count == 4;
  }
  if (!strcmp(word, "hold") && count == 1 && n[0] >= 0 && n[0] < PIN_COUNT) return pins[n[0]].is_held = 1;
  if (!strcmp(word, "lock-direction") && count == 1 && n[0] >= 0 && n[0] < PIN_COUNT)
    return pins[n[0]].is_direction_locked = 1;
  if (!strcmp(word, "free") && count == 1 && n[0] >= 0 && n[0] < PIN_COUNT) return !(pins[n[0]].is_held = 0);
  if (!strcmp(word, "clear-counts")) return clear_counts(), 1;
  if (!strcmp(word, "chain") && count == 3 + SIGNAL_COUNT) return board_chain(n[0], n[1], n[2], n + 3), 1;
  if (!strcmp(word, "direct")) return board_direct(n, count), 1;
  if (!strcmp(word, "join") && count == 2) return board_join(n[0], n[1]);
  if (!strcmp(word, "part") && count == 2) return board_part(n[0], n[1]);
  if (!strcmp(word, "mend") && count == 1) return board_fault(n[0], NO_FAULT);
  if (!strcmp(word, "stuck-low") && count == 1) return board_fault(n[0], STUCK_LOW);
  if (!strcmp(word, "stuck-high") && count == 1) return board_fault(n[0], STUCK_HIGH);
  if (!strcmp(word, "dead-output") && count == 1) return board_fault(n[0], DEAD_OUTPUT);
  if (!strcmp(word, "dead-input") && count == 1) return board_fault(n[0], DEAD_INPUT);
  if (!strcmp(word, "tie-outputs") && count == 2) return board_tie_outputs(n[0], n[1]);
  if (!strcmp(word, "code") && count == 2) return board_code(n[0], n[1]);
  if (!strcmp(word, "cut-output-chain") && count == 1) return board_cut_output_chain(n[0]);
  if (!strcmp(word, "cut-input-chain") && count == 2) return board_cut_input_chain(n[0], n[1]);
  if (!strcmp(word, "cut-tie")) return board_cut_tie(), 1;
  return 0;
}

static int fs_write(const char *path, const char *data, size_t size, off_t offset, struct fuse_file_info *fi) {
  (void)offset, (void)fi;
  struct node node = find(path);
  char *text = strndup(data, size);
  if (!text) return -ENOMEM;
  int answer = -EACCES;
  if (node.kind == EXPORT || node.kind == UNEXPORT) answer = do_export(text, node.kind == EXPORT);
  else if (node.kind == PIN_FILE) answer = write_pin(node, text);
  else if (node.kind == CONTROL_FILE) {
    answer = 0;
    char *end_of_line = text;
    for (char *line; (line = strsep(&end_of_line, "\n"));)
      if (!control(line)) answer = -EINVAL;
  }
  free(text);
  return answer < 0 ? answer : (int)size;
}

/* Writers open with O_TRUNC; a sysfs file has nothing to cut off. */
static int fs_truncate(const char *path, off_t size, struct fuse_file_info *fi) {
  (void)size, (void)fi;
  return find(path).kind == NO_NODE ? -ENOENT : 0;
}

static void *fs_init(struct fuse_conn_info *connection, struct fuse_config *config) {
  (void)connection;
  /* Pins come and go and levels change behind the caller's back: nothing may be remembered. */
  config->entry_timeout = config->attr_timeout = config->negative_timeout = 0;
  return NULL;
}

static const struct fuse_operations operations = {
    .init = fs_init,
    .getattr = fs_getattr,
    .readdir = fs_readdir,
    .open = fs_open,
    .read = fs_read,
    .write = fs_write,
    .truncate = fs_truncate,
};

int main(int argc, char **argv) {
  char reset[] = "reset";
  control(reset);
  return fuse_main(argc, argv, &operations, NULL);
}
