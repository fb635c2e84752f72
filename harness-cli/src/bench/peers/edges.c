/* A tight single pass, the floor: reads in blocks, fixed-point numbers, a mask of sixteen contacts, exclusive or of
   masks; no validation, one layout. Prints how many edges, and a sum so that no number is left unread. */
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

enum { CONTACTS = 16, BLOCK = 1 << 18, LONGEST = 256 };

static char buffer[BLOCK + LONGEST];

int main(int argc, char **argv) {
  int file = argc > 1 ? open(argv[1], O_RDONLY) : -1;
  if (file < 0) return 1;
  size_t kept = 0;
  int64_t sum = 0, edges = 0;
  uint32_t before = 0;
  int rows = 0, header = 0;
  ssize_t n;
  while ((n = read(file, buffer + kept, BLOCK)) > 0) {
    char *p = buffer, *end = buffer + kept + n, *limit = end;
    while (limit > buffer && limit[-1] != '\n') limit--;
    while (p < limit) {
      if (!header) {
        header = *p != '#';
        p = (char *)memchr(p, '\n', limit - p) + 1;
        continue;
      }
      int64_t time = 0, position = 0;
      for (; *p != ','; p++)
        if (*p != '.') time = time * 10 + (*p - '0');
      for (p++; *p != ','; p++)
        if (*p != '.') position = position * 10 + (*p - '0');
      uint32_t now = 0;
      for (int i = 0; i < CONTACTS; i++) now = now << 1 | (p[1 + 2 * i] & 1);
      p += 2 * CONTACTS + 1;
      while (*p++ != '\n') {}
      if (rows++ && now != before) edges += __builtin_popcount(now ^ before);
      before = now;
      sum += time ^ position;
    }
    kept = end - limit;
    memmove(buffer, limit, kept);
  }
  printf("%lld\n", (long long)edges);
  return sum == 42;
}
