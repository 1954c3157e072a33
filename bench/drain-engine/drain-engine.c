/*
 * The yardstick of the drain simulation: the same years of pours, drawn from the same generator and
 * played through the same flush rules, in plain C. One thread, no object per pour, no allocation in
 * the loop. compare.mjs builds it with `cc -O3` and holds the engine of the package against it.
 *
 * Prints one line a device: name, pours, litres clean, litres to drain, ns to draw a pour and ns to
 * play one (medians of the years).
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define SAME_INSTANT 1e-6
#define DAY 86400.0
#define DAYS 365
#define MOST_POURS 20000

/* ---- random numbers: splitmix64 seeds xoshiro128** ---- */

static uint64_t splitmix(uint64_t *counter) {
  uint64_t word = (*counter += 0x9e3779b97f4a7c15ull);
  word = (word ^ (word >> 30)) * 0xbf58476d1ce4e5b9ull;
  word = (word ^ (word >> 27)) * 0x94d049bb133111ebull;
  return word ^ (word >> 31);
}

typedef struct { uint32_t s[4]; } Stream;

static Stream stream_of(uint64_t seed, uint64_t number) {
  uint64_t counter = seed;
  counter = splitmix(&counter) ^ number;
  uint64_t first = splitmix(&counter), second = splitmix(&counter);
  return (Stream){{(uint32_t)first, first >> 32, (uint32_t)second, second >> 32}};
}

static uint32_t rotate(uint32_t word, int bits) { return word << bits | word >> (32 - bits); }

static uint32_t next32(Stream *r) {
  uint32_t *s = r->s, out = rotate(s[1] * 5, 7) * 9, t = s[1] << 9;
  s[2] ^= s[0]; s[3] ^= s[1]; s[1] ^= s[2]; s[0] ^= s[3];
  s[2] ^= t; s[3] = rotate(s[3], 11);
  return out;
}

static double fraction(Stream *r) {
  double upper = next32(r) >> 5, lower = next32(r) >> 6;
  return (upper * 67108864.0 + lower) / 9007199254740992.0;
}

static double exponential(Stream *r, double mean) { return -log(1 - fraction(r)) * mean; }

/* ---- pours of a year ---- */

typedef struct { double from, to, per_day, litres; int together; } Group;
#define GROUPS 4

static double part_at[GROUPS][MOST_POURS];
static int part_count[GROUPS];

static int draw_year(const Group *groups, uint64_t seed, double s_per_l, double *at, double *litres) {
  int total = 0;
  for (int g = 0; g < GROUPS; g++) {
    const Group *group = &groups[g];
    int n = 0;
    if (group->together) {
      double pour = group->litres * s_per_l, free_at = 0;
      for (int day = 0; day < DAYS; day++) {
        double first = fmax(day * DAY + group->from, free_at);
        for (int k = 0; k < (int)group->per_day; k++) part_at[g][n++] = first + k * pour;
        free_at = first + group->per_day * pour;
      }
    } else {
      Stream r = stream_of(seed, g);
      double gap = (group->to - group->from) / group->per_day;
      for (int day = 0; day < DAYS; day++) {
        double clock = group->from + exponential(&r, gap);
        while (clock < group->to) {
          if (n == MOST_POURS) exit(3);
          part_at[g][n++] = day * DAY + clock;
          clock += exponential(&r, gap);
        }
      }
    }
    part_count[g] = n;
    total += n;
  }
  if (total > MOST_POURS) exit(3);
  int taken[GROUPS] = {0};
  double head[GROUPS], free_at = 0;
  for (int g = 0; g < GROUPS; g++) head[g] = part_count[g] > 0 ? part_at[g][0] : INFINITY;
  for (int i = 0; i < total; i++) {
    int g = 0;
    for (int k = 1; k < GROUPS; k++) if (head[k] < head[g]) g = k;
    double start = fmax(head[g], free_at);
    at[i] = start;
    litres[i] = groups[g].litres;
    free_at = start + litres[i] * s_per_l;
    int next = ++taken[g];
    head[g] = next < part_count[g] ? part_at[g][next] : INFINITY;
  }
  return total;
}

/* ---- flush rules ---- */

enum trigger { IDLE, INTERVAL, START, PRODUCED, POWER_ON, DUMP_BY_VOLUME };
enum quiet { NEVER, SKIP, DEFER };

typedef struct {
  enum trigger trigger;
  double after, volume, fraction, min_interval;
  int clean, repeat, since_flush;
  enum quiet quiet;
  double quiet_from, quiet_to;
  /* while playing */
  double due, counter, drain, count;
  int deferred;
} Rule;

typedef struct {
  Rule *rules;
  int n, timers[16], timer_count, starts[8], start_count, volumes[8], volume_count;
  double last_flush;
} Play;

static double quiet_wait(double local, double from, double to) {
  if (from == to) return 0;
  double clock = local - DAY * floor((local + SAME_INSTANT) / DAY), look = clock + SAME_INSTANT;
  int quiet = from < to ? look >= from && look < to : look >= from || look < to;
  if (!quiet) return 0;
  return to > look ? to - clock : to + DAY - clock;
}

static int is_spaced(const Play *p, const Rule *r, double at) {
  return r->min_interval == 0 || at - p->last_flush >= r->min_interval - SAME_INSTANT;
}

static void flush(Play *p, Rule *r, double at, double times) {
  r->count += times;
  p->last_flush = at;
  for (int i = 0; i < p->n; i++) {
    Rule *other = &p->rules[i];
    if (other->since_flush) { other->due = at + other->after; other->deferred = 0; }
  }
}

static double earliest(const Play *p) {
  double first = INFINITY;
  for (int k = 0; k < p->timer_count; k++) first = fmin(first, p->rules[p->timers[k]].due);
  return first;
}

static void fire_timers(Play *p, double until) {
  for (;;) {
    double first = earliest(p);
    if (!(first <= until)) return;
    double same = fmin(first + SAME_INSTANT, until);
    int k = 0;
    while (p->rules[p->timers[k]].due > same) k++;
    Rule *r = &p->rules[p->timers[k]];
    double at = r->due;
    int dropped = 0;
    if (r->quiet != NEVER && !r->deferred) {
      double wait = quiet_wait(at, r->quiet_from, r->quiet_to);
      if (wait > 0 && r->quiet == DEFER) { r->due = at + wait; r->deferred = 1; continue; }
      dropped = wait > 0;
    }
    r->deferred = 0;
    if (r->trigger == IDLE) r->due = r->repeat ? at + r->after : INFINITY;
    else if (r->since_flush) r->due = at + r->after;
    else r->due = (floor((at + SAME_INSTANT) / r->after) + 1) * r->after;
    if (!dropped && is_spaced(p, r, at)) flush(p, r, at, 1);
  }
}

static double play_year(Rule *rules, int n, int pours, const double *at, const double *litres,
                        double s_per_l, double ratio, double per_start, double *clean_out) {
  Play p = {.rules = rules, .n = n, .last_flush = -INFINITY};
  for (int i = 0; i < n; i++) {
    Rule *r = &rules[i];
    r->count = r->counter = r->deferred = 0;
    r->due = INFINITY;
    r->drain = r->volume * r->fraction + (r->clean ? ratio * r->volume : 0);
    if (r->trigger == INTERVAL) { p.timers[p.timer_count++] = i; r->due = r->after; }
    if (r->trigger == START) p.starts[p.start_count++] = i;
    if (r->trigger == PRODUCED || r->trigger == DUMP_BY_VOLUME) p.volumes[p.volume_count++] = i;
  }
  for (int i = 0; i < n; i++) if (rules[i].trigger == IDLE) p.timers[p.timer_count++] = i;
  for (int i = 0; i < n; i++) if (rules[i].trigger == POWER_ON) flush(&p, &rules[i], 0, 1);

  double last = DAYS * DAY + SAME_INSTANT, next = earliest(&p);
  double before_end = 0, before_at = 0, clean = 0, lost = 0;
  int starts = 0;
  for (int i = 0; i < pours; i++) {
    double start = at[i], volume = litres[i];
    if (!(start >= 0 && volume >= 0 && start < INFINITY && volume < INFINITY)) exit(1);
    if (start < before_at - SAME_INSTANT || start < before_end - SAME_INSTANT) exit(2);
    double end = start + volume * s_per_l;
    if (start <= last) {
      if (next <= start + SAME_INSTANT) fire_timers(&p, fmin(start + SAME_INSTANT, last));
      double pause = start - before_end;
      for (int k = 0; k < p.start_count; k++) {
        Rule *r = &rules[p.starts[k]];
        if (pause >= r->after - SAME_INSTANT && is_spaced(&p, r, start)) flush(&p, r, start, 1);
      }
      starts++;
      double summand = volume - lost, sum = clean + summand;
      lost = (sum - clean) - summand;
      clean = sum;
      if (end <= last) {
        for (int k = 0; k < p.volume_count; k++) {
          Rule *r = &rules[p.volumes[k]];
          r->counter += volume;
          double times = floor(r->counter / r->after + 1e-9);
          if (times < 1 || !is_spaced(&p, r, end)) continue;
          r->counter -= times * r->after;
          flush(&p, r, end, times);
        }
      }
      next = INFINITY;
      for (int k = 0; k < p.timer_count; k++) {
        Rule *r = &rules[p.timers[k]];
        if (r->trigger == IDLE) { r->due = end + r->after; r->deferred = 0; }
        else if (r->due < end) r->due = end;
        if (r->due < next) next = r->due;
      }
    }
    before_at = start;
    before_end = end;
  }
  fire_timers(&p, last);
  double flushed = 0;
  for (int i = 0; i < n; i++) flushed += rules[i].count * rules[i].drain;
  *clean_out = clean;
  return ratio * clean + per_start * starts + flushed;
}

/* ---- the same invented family kitchen and devices as compare.mjs ---- */

/* Time of the processor, not of the wall: other work on the machine counts less. */
static double now_ns(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec * 1e9 + t.tv_nsec;
}

static int ascending(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static double median(double *values, int n) {
  qsort(values, n, sizeof *values, ascending);
  return values[n / 2];
}

int main(int argc, char **argv) {
  int years = argc > 1 ? atoi(argv[1]) : 1000;
  if (years < 1) return 4;
  double *draw_ns = malloc(years * sizeof *draw_ns), *play_ns = malloc(years * sizeof *play_ns);
  if (draw_ns == NULL || play_ns == NULL) return 5;
  static double at[MOST_POURS], litres[MOST_POURS];
  const double s_per_l = 60 / 1.8;
  const Group kitchen[GROUPS] = {{23400, 30600, 5, 0.3, 0},
                                 {30600, 64800, 6, 0.25, 0},
                                 {64800, 70200, 3, 1.5, 1},
                                 {70200, 82800, 5, 0.25, 0}};
  Rule one[] = {{.trigger = IDLE, .after = 600, .volume = 1.4, .fraction = 1}};
  Rule every[] = {
      {.trigger = POWER_ON, .volume = 2, .fraction = 1},
      {.trigger = IDLE, .after = 600, .volume = 1.4, .fraction = 1, .min_interval = 1200,
       .quiet = DEFER, .quiet_from = 79200, .quiet_to = 25200},
      {.trigger = IDLE, .after = 10800, .volume = 0.6, .fraction = 1, .repeat = 1},
      {.trigger = INTERVAL, .after = 43200, .volume = 0.8, .fraction = 1},
      {.trigger = INTERVAL, .after = 21600, .volume = 0.5, .fraction = 1, .since_flush = 1},
      {.trigger = START, .after = 7200, .volume = 0.2, .fraction = 1, .clean = 1},
      {.trigger = PRODUCED, .after = 10, .volume = 0.6, .fraction = 1},
      {.trigger = DUMP_BY_VOLUME, .after = 40, .volume = 3, .fraction = 1}};
  struct { const char *name; Rule *rules; int n; double per_start; } devices[] = {
      {"one-rule", one, 1, 0}, {"eight-rules", every, 8, 0.02}};

  for (int d = 0; d < 2; d++) {
    double clean = 0, drain = 0;
    long pours = 0;
    for (int year = 0; year < years; year++) {
      double began = now_ns();
      int n = draw_year(kitchen, year, s_per_l, at, litres);
      double drawn = now_ns();
      double of_year;
      drain += play_year(devices[d].rules, devices[d].n, n, at, litres, s_per_l, 0.5,
                         devices[d].per_start, &of_year);
      double played = now_ns();
      clean += of_year;
      pours += n;
      draw_ns[year] = (drawn - began) / n;
      play_ns[year] = (played - drawn) / n;
    }
    printf("%s %ld %.9f %.9f %.3f %.3f\n", devices[d].name, pours, clean, drain,
           median(draw_ns, years), median(play_ns, years));
  }
  return 0;
}
