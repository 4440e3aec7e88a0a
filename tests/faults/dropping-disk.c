/*
 * A disk that drops what was not synced: a library that is loaded before libc (LD_PRELOAD) and keeps, of each file in the
 * folder DISK_AT, a copy in the folder DISK_KEPT as it was at its last fsync or fdatasync. What the copies hold when the
 * process is killed is what a power cut leaves: a file that was removed is still there until its folder was synced. The
 * shared memory beside a log is made anew at each start and not kept.
 */
#define _GNU_SOURCE
#include <dirent.h>
#include <dlfcn.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Takes away what is no longer in the folder, which has been synced. */
static void forget_removed(const char *at, const char *kept) {
  char path[4096];
  DIR *copies = opendir(kept);
  for (struct dirent *entry; copies && (entry = readdir(copies));) {
    snprintf(path, sizeof path, "%s/%s", at, entry->d_name);
    if (entry->d_name[0] == '.' || access(path, F_OK) == 0) continue;
    snprintf(path, sizeof path, "%s/%s", kept, entry->d_name);
    unlink(path);
  }
  if (copies) closedir(copies);
}

static void keep(int fd) {
  const char *at = getenv("DISK_AT"), *kept = getenv("DISK_KEPT");
  char link[64], path[4096], copy[4096], unfinished[4200], bytes[65536];
  if (!at || !kept) return;
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (length < 0) return;
  path[length] = 0;
  if (strcmp(path, at) == 0) return forget_removed(at, kept);
  size_t folder = strlen(at);
  if (strncmp(path, at, folder) != 0 || path[folder] != '/') return;
  const char *name = path + folder + 1;
  struct stat found;
  if (strchr(name, '/') || strstr(name, "-shm") || fstat(fd, &found) || !S_ISREG(found.st_mode)) return;
  snprintf(copy, sizeof copy, "%s/%s", kept, name);
  snprintf(unfinished, sizeof unfinished, "%s.unfinished", copy);
  int source = open(path, O_RDONLY), target = open(unfinished, O_WRONLY | O_CREAT | O_TRUNC, 0600);
  ssize_t count = 0;
  while (source >= 0 && target >= 0 && (count = read(source, bytes, sizeof bytes)) > 0)
    if (write(target, bytes, count) != count) abort();
  if (count < 0) abort();
  if (source >= 0) close(source);
  if (target >= 0) close(target);
  rename(unfinished, copy);
}

/* One file put in the place of another: whole or not at all, as journaling file systems have it. */
int rename(const char *from, const char *to) {
  static int (*real)(const char *, const char *);
  if (!real) real = (int (*)(const char *, const char *))dlsym(RTLD_NEXT, "rename");
  const char *at = getenv("DISK_AT"), *kept = getenv("DISK_KEPT");
  int result = real(from, to);
  size_t folder = at ? strlen(at) : 0;
  if (result == 0 && kept && folder && !strncmp(from, at, folder) && !strncmp(to, at, folder)) {
    char source[4096], target[4096];
    snprintf(source, sizeof source, "%s%s", kept, from + folder);
    snprintf(target, sizeof target, "%s%s", kept, to + folder);
    real(source, target);
  }
  return result;
}

#define SYNCING(name)                                                   \
  int name(int fd) {                                                    \
    static int (*real)(int);                                            \
    if (!real) real = (int (*)(int))dlsym(RTLD_NEXT, #name);            \
    int result = real(fd);                                              \
    if (result == 0) keep(fd);                                          \
    return result;                                                      \
  }

SYNCING(fsync)
SYNCING(fdatasync)
