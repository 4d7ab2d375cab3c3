/* A disk that forgets: what a program did not sync is not in its second folder.

   Loaded before the C library (LD_PRELOAD). When a program syncs a file below FORGETTING_LIVE, its
   content is copied to FORGETTING_KEPT/data/INODE; when it syncs a folder, the names in it go to
   FORGETTING_KEPT/names/INODE, a line each: inode, blank, name. Both are replaced whole. After the
   program was killed, forgetting_disk.py puts together what a disk would hold after a power cut. */

#define _GNU_SOURCE
#include <dirent.h>
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

static int write_names(int out, const char *folder) {
    DIR *open_folder = opendir(folder);
    if (!open_folder) return -1;
    for (struct dirent *each; (each = readdir(open_folder));)
        if (strcmp(each->d_name, ".") && strcmp(each->d_name, ".."))
            dprintf(out, "%lu %s\n", (unsigned long)each->d_ino, each->d_name);
    return closedir(open_folder);
}

static int write_content(int out, const char *file) {
    static char some[1 << 20];
    int in = open(file, O_RDONLY | O_CLOEXEC);
    ssize_t length;
    if (in < 0) return -1;
    while ((length = read(in, some, sizeof some)) > 0)
        if (write(out, some, length) != length) abort();
    return close(in);
}

static void keep(int synced) {
    const char *live = getenv("FORGETTING_LIVE"), *kept = getenv("FORGETTING_KEPT");
    char link[64], path[PATH_MAX], whole[PATH_MAX], part[PATH_MAX];
    struct stat told;
    if (!live || !kept || fstat(synced, &told)) return;
    snprintf(link, sizeof link, "/proc/self/fd/%d", synced);
    ssize_t length = readlink(link, path, sizeof path - 1);
    if (length < 0) return;
    path[length] = 0;
    if (strncmp(path, live, strlen(live))) return;
    int is_folder = S_ISDIR(told.st_mode);
    snprintf(whole, sizeof whole, "%s/%s/%lu", kept, is_folder ? "names" : "data",
             (unsigned long)told.st_ino);
    snprintf(part, sizeof part, "%s/lock", kept);
    int lock = open(part, O_RDWR | O_CREAT | O_CLOEXEC, 0666);
    if (lock < 0 || flock(lock, LOCK_EX)) abort(); /* two may sync one file at once */
    snprintf(part, sizeof part, "%s/part", kept);
    int out = open(part, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
    if (out < 0 || (is_folder ? write_names(out, link) : write_content(out, link))) abort();
    close(out);
    if (rename(part, whole)) abort();
    close(lock);
}

#define SYNCS(name)                                              \
    int name(int file) {                                         \
        static int (*real)(int);                                 \
        if (!real) real = (int (*)(int))dlsym(RTLD_NEXT, #name); \
        int told = real(file);                                   \
        if (!told) keep(file);                                   \
        return told;                                             \
    }

SYNCS(fsync)
SYNCS(fdatasync)
