/* Times libebur128 on samples in memory, for chainwright.bench.LoudnessRace.
 * usage: loudness FILE CHANNELS RATE, with FILE interleaved doubles of this machine's byte order.
 * Reads a line, `integrated` or `true-peak`, measures the file once in blocks of 100 ms, and answers
 * with the processor time [ns] and the reading [LUFS, or dBTP over all channels]; and so on to the end.
 * build: cc -O2 -o loudness loudness.c -lebur128 -lm   (Debian: libebur128-dev) */
#include <ebur128.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static long long processor_nanoseconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
  return t.tv_sec * 1000000000LL + t.tv_nsec;
}

int main(int count, char **arguments) {
  if (count != 4) {
    fprintf(stderr, "usage: loudness FILE CHANNELS RATE\n");
    return 2;
  }
  FILE *file = fopen(arguments[1], "rb");
  if (file == NULL) {
    perror(arguments[1]);
    return 2;
  }
  unsigned channels = (unsigned)atoi(arguments[2]);
  unsigned rate = (unsigned)atoi(arguments[3]);
  fseek(file, 0, SEEK_END);
  long bytes = ftell(file);
  rewind(file);
  double *samples = malloc((size_t)bytes);
  if (samples == NULL || fread(samples, 1, (size_t)bytes, file) != (size_t)bytes) {
    fprintf(stderr, "cannot read %s\n", arguments[1]);
    return 2;
  }
  fclose(file);
  long frames = bytes / (long)(channels * sizeof *samples);
  long block = rate / 10;
  char line[64];
  while (fgets(line, sizeof line, stdin) != NULL) {
    int is_peak = strncmp(line, "true-peak", 9) == 0;
    long long start = processor_nanoseconds();
    ebur128_state *state =
        ebur128_init(channels, rate, is_peak ? EBUR128_MODE_TRUE_PEAK : EBUR128_MODE_I);
    for (long from = 0; from < frames; from += block) {
      long length = frames - from < block ? frames - from : block;
      ebur128_add_frames_double(state, samples + from * channels, (size_t)length);
    }
    double reading = 0;
    if (is_peak) {
      for (unsigned c = 0; c < channels; c++) {
        double peak;
        ebur128_true_peak(state, c, &peak);
        reading = peak > reading ? peak : reading;
      }
      reading = 20 * log10(reading);
    } else {
      ebur128_loudness_global(state, &reading);
    }
    long long end = processor_nanoseconds();
    ebur128_destroy(&state);
    printf("%lld %.6f\n", end - start, reading);
    fflush(stdout);
  }
  return 0;
}
