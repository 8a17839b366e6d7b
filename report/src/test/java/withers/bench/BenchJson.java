package withers.bench;

import tools.jackson.databind.json.JsonMapper;

/** Runs and stages as JSON, each in one line. */
final class BenchJson {

  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private BenchJson() {}

  static String write(Measured stage) {
    return MAPPER.writeValueAsString(stage);
  }

  static Measured readStage(String line) {
    return MAPPER.readValue(line, Measured.class);
  }

  static String write(BenchRun run) {
    return MAPPER.writeValueAsString(run);
  }

  static BenchRun readRun(String line) {
    return MAPPER.readValue(line, BenchRun.class);
  }
}
