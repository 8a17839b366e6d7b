package withers.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine.Option;
import withers.demo.DemoWorld;

/** Which stages run, how often and in what. */
final class StageOptions {

  @Option(names = "--seed", description = "Another seed gives other files.")
  private long seed = DemoWorld.SEED;

  @Option(names = "--label", description = "Goes into the JSON, a commit for example.")
  private String label = "";

  @Option(
      names = "--rounds",
      defaultValue = "1",
      description =
          "All stages so many times, each time anew; the least counts (${DEFAULT-VALUE}).")
  private int rounds;

  @Option(
      names = "--stages",
      split = ",",
      description =
          "These alone, by their names in the JSON. What a stage works on has to be there: most"
              + " need first-import.")
  private List<Stage> only = new ArrayList<>();

  @Option(
      names = "--jvm",
      description =
          "An option for the JVM of each stage, {stage} standing for its name; repeatable.")
  private List<String> jvm = new ArrayList<>();

  @Option(
      names = "--in-process",
      description = "Everything in this one JVM: quick to start, and no measurement.")
  private boolean inProcess;

  long seed() {
    return seed;
  }

  String label() {
    return label;
  }

  int rounds() {
    return rounds;
  }

  List<Stage> stages() {
    return only.isEmpty() ? Arrays.asList(Stage.values()) : List.copyOf(only);
  }

  /** Whatever runs a stage, with so much heap. */
  StageRunner runner(Stage stage, String heap) {
    if (inProcess) {
      return StageMain::run;
    }
    List<String> options = new ArrayList<>(List.of("-Xmx" + heap));
    jvm.forEach(option -> options.add(option.replace("{stage}", stage.word())));
    return new StageProcess(options);
  }
}
