/* The tables of SPEC 5 and 6. */
#include "tl_tables.h"

#define MOST_U32 0xffffffffu
#define MOST_TIME 0x1fffffffffffffu
#define U8(name, at, least, most) {name, TL_U8, at, least, most, NULL}
#define WORD(name, at, words) {name, TL_U8, at, 0, 255, words}
#define U16(name, at, least, most) {name, TL_U16, at, least, most, NULL}
#define U32(name, at, least) {name, TL_U32, at, least, MOST_U32, NULL}
#define TIME(name, at, least) {name, TL_U64, at, least, MOST_TIME, NULL}
#define TEXT(name, least, most) {name, TL_STRING, 0, least, most, NULL}

static const tl_word kinds[] = {{"position", 1}, {"contact", 2}, {NULL, 0}};
static const tl_word reports[] = {{"sampled", 1}, {"edges", 2}, {"both", 3}, {NULL, 0}};
static const tl_word states[] = {{"idle", 0}, {"running", 1}, {"sending", 2}, {NULL, 0}};
static const tl_word utc_sources[] = {{"none", 0}, {"host", 1}, {"battery", 2}, {"reference", 3}, {NULL, 0}};
static const tl_word marks[] = {{"closed-stop", 1}, {"open-stop", 2}, {"adjusted", 3}, {"note", 4}, {NULL, 0}};
static const tl_word sources[] = {{"button", 1}, {"host", 2}, {NULL, 0}};
static const tl_word causes[] = {{"overrun", 1}, {"sensor", 2}, {"storage", 3}, {"queue", 4}, {NULL, 0}};
static const tl_word whats[] = {{"samples", 1}, {"edges", 2}, {NULL, 0}};
static const tl_word results[] = {{"done", 0}, {"not-now", 1}, {"not-fitted", 2}, {"bad-value", 3},
                                  {"busy", 4}, {"failed", 5}, {"not-known", 6}, {NULL, 0}};
static const tl_word talks[] = {{"keep", 0}, {"frames", 1}, {"lines", 2}, {NULL, 0}};

static const tl_field identity[] = {
    U8("major", 4, 1, 255), U8("minor", 5, 0, 255), U8("clock_bits", 6, 32, 53),
    U8("contacts", 7, 0, 64), U8("positions", 8, 0, 1), {"encodings", TL_H8, 9, 1, 3, NULL},
    U16("body_limit", 10, 64, 512), {"abilities", TL_H32, 12, 0, MOST_U32, NULL},
    U32("session", 16, 0), U32("rate_min", 20, 0), U32("rate_max", 24, 0), TEXT("model", 0, 32),
    TEXT("serial", 0, 32), TEXT("firmware", 0, 32)};
static const tl_field channel[] = {
    WORD("kind", 4, kinds), U8("number", 5, 0, 63), U8("closed_level", 6, 0, 1),
    WORD("reports", 7, reports), {"numerator", TL_I32, 8, 0, MOST_U32, NULL},
    U32("denominator", 12, 1), U32("modulus", 16, 0), U32("delay", 20, 0), U32("resolution", 24, 0),
    TEXT("name", 1, 32), TEXT("unit", 0, 16)};
static const tl_field status[] = {
    WORD("state", 4, states), WORD("utc_source", 5, utc_sources), U16("backlog", 6, 0, 1000),
    TIME("stamp", 8, 0), TIME("utc", 16, 0), U32("session", 24, 0), U32("rate", 28, 0),
    U32("samples", 32, 0), U32("samples_lost", 36, 0), U32("edges_lost", 40, 0),
    U32("messages_dropped", 44, 0), U32("bad_received", 48, 0)};
static const tl_field samples[] = {
    U32("number", 4, 0), TIME("stamp", 8, 0), U32("period", 16, 0),
    {"known", TL_H64, 24, 0, UINT64_MAX, NULL}, {"rows", TL_ROWLIST, 42, 0, 0, NULL}};
static const tl_field edges[] = {
    U32("number", 4, 0), TIME("stamp", 8, 0), U16("fraction", 16, 0, 999),
    {"list", TL_EDGELIST, 19, 0, 0, NULL}};
static const tl_field mark[] = {
    WORD("kind", 4, marks), WORD("source", 5, sources), U16("number", 6, 0, 65535),
    TIME("stamp", 8, 0), TEXT("text", 0, 120)};
static const tl_field loss[] = {
    WORD("cause", 4, causes), WORD("what", 5, whats), U32("count", 8, 1), U32("number", 12, 0),
    TIME("stamp", 16, 0), TIME("until", 24, 0)};
static const tl_field answer[] = {
    U8("command", 4, 0, 255), WORD("result", 5, results), U16("to", 6, 0, 65535), U32("value", 8, 0)};
static const tl_field stored[] = {
    U16("index", 4, 0, 65535), U16("count", 6, 1, 65535), U32("id", 8, 0), U32("bytes", 12, 0),
    {"check", TL_H32, 16, 0, MOST_U32, NULL}, U32("samples", 20, 0), TIME("started", 24, 0),
    TIME("duration", 32, 0), TEXT("label", 0, 32)};
static const tl_field piece[] = {
    U32("id", 4, 0), U32("offset", 8, 0), {"data", TL_DATA, 14, 0, 0, NULL}};
static const tl_field hello[] = {
    U8("major", 4, 1, 255), U8("minor", 5, 0, 255), WORD("encoding", 6, talks)};
static const tl_field start[] = {U32("rate", 4, 0), U16("gather", 8, 0, 1000)};
static const tl_field rate[] = {U32("rate", 4, 1)};
static const tl_field place[] = {WORD("kind", 4, marks), TEXT("text", 0, 120)};
static const tl_field set_time[] = {TIME("utc", 4, 1)};
static const tl_field fetch[] = {U32("id", 4, 0), U32("offset", 8, 0), U32("length", 12, 0)};

#define LAYOUT(name, type, fixed, fields) {name, type, fixed, sizeof fields / sizeof fields[0], fields}

static const tl_layout layouts[] = {
    LAYOUT("identity", TL_IDENTITY, 28, identity), LAYOUT("channel", TL_CHANNEL, 28, channel),
    LAYOUT("status", TL_STATUS, 52, status), LAYOUT("samples", TL_SAMPLES, 42, samples),
    LAYOUT("edges", TL_EDGES, 19, edges), LAYOUT("mark", TL_MARK, 16, mark),
    LAYOUT("loss", TL_LOSS, 32, loss), LAYOUT("answer", TL_ANSWER, 12, answer),
    LAYOUT("stored", TL_STORED, 40, stored), LAYOUT("piece", TL_PIECE, 14, piece),
    LAYOUT("hello", TL_HELLO, 7, hello), LAYOUT("start", TL_START, 10, start),
    {"stop", TL_STOP, 4, 0, NULL}, LAYOUT("rate", TL_RATE, 8, rate),
    LAYOUT("place", TL_PLACE, 5, place), LAYOUT("time", TL_TIME, 12, set_time),
    {"list", TL_LIST, 4, 0, NULL}, LAYOUT("fetch", TL_FETCH, 16, fetch),
    {"query", TL_QUERY, 4, 0, NULL}};

#define LAYOUTS (sizeof layouts / sizeof layouts[0])

const tl_layout *tl_layout_of(uint8_t type) {
  for (size_t i = 0; i < LAYOUTS; i++) {
    if (layouts[i].type == type) {
      return &layouts[i];
    }
  }
  return NULL;
}

const tl_layout *tl_layout_named(const uint8_t *name, size_t length) {
  for (size_t i = 0; i < LAYOUTS; i++) {
    if (strlen(layouts[i].name) == length && memcmp(layouts[i].name, name, length) == 0) {
      return &layouts[i];
    }
  }
  return NULL;
}

unsigned tl_size(tl_shape shape) {
  static const uint8_t sizes[] = {1, 1, 2, 4, 4, 4, 8, 8, 0, 0, 0, 0};
  return sizes[shape];
}

uint64_t tl_get(const uint8_t *at, unsigned size) {
  uint64_t value = 0;
  for (unsigned i = size; i > 0; i--) {
    value = value << 8 | at[i - 1];
  }
  return value;
}

void tl_put(uint8_t *at, uint64_t value, unsigned size) {
  for (unsigned i = 0; i < size; i++) {
    at[i] = (uint8_t)(value >> (8 * i));
  }
}
