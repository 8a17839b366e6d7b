package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.change.InEffect;
import withers.log.ImportMarker;
import withers.log.StaleParentException;
import withers.point.Point;

/** Two imports of one source at a time. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RivalImportsTest {

  private static final List<String> JANUARY =
      List.of("K1,999010000000017,Pip,2031-01-03,Ada", "K2,999010000000025,Tam,2031-01-03,Bela");
  private static final List<String> FEBRUARY =
      List.of("K1,999010000000017,Pip,2031-02-03,Cleo", "K3,999010000000033,Ned,2031-02-03,Dag");

  @TempDir Path folder;

  @Test
  void an_import_that_was_overtaken_compares_again() {
    TestImports imports = new TestImports(folder.resolve("rivals"));
    List<Path> january = List.of(imports.file("2031-01-31.csv", JANUARY));
    List<Path> february = List.of(imports.file("2031-02-28.csv", FEBRUARY));
    AtomicInteger overtaken = new AtomicInteger();

    ImportReport report =
        imports.take(
            february,
            step -> {
              if (step == Point.IMPORT_BEFORE_MARKER && overtaken.getAndIncrement() == 0) {
                imports.take(january);
              }
            });

    assertThat(report.tally().disappeared()).as("seen after comparing again").isEqualTo(1);
    List<ImportMarker> markers = imports.log.snapshot().markers();
    assertThat(markers).hasSize(2);
    assertThat(markers.get(1).parent()).contains(markers.get(0).id());
    TestImports one = new TestImports(folder.resolve("one"));
    one.take(List.of(one.file("2031-01-31.csv", JANUARY)));
    one.take(List.of(one.file("2031-02-28.csv", FEBRUARY)));
    assertThat(InEffect.on(imports.log.snapshot(), TestImports.CLINIC))
        .isEqualTo(InEffect.on(one.log.snapshot(), TestImports.CLINIC));
  }

  @Test
  void an_import_that_is_overtaken_again_and_again_gives_up_and_changes_nothing() {
    TestImports imports = new TestImports(folder.resolve("rivals"));
    List<Path> february = List.of(imports.file("2031-02-28.csv", FEBRUARY));
    AtomicInteger rivals = new AtomicInteger();

    assertThatThrownBy(
            () ->
                imports.take(
                    february,
                    step -> {
                      if (step == Point.IMPORT_BEFORE_MARKER) {
                        imports.take(
                            List.of(
                                imports.file(
                                    "2030-0%d-15.csv".formatted(rivals.incrementAndGet()),
                                    JANUARY)));
                      }
                    }))
        .isInstanceOf(StaleParentException.class);

    assertThat(rivals).hasValue(3);
    assertThat(imports.log.snapshot().markers()).hasSize(3);
    assertThat(imports.log.sweep()).as("leftovers of three attempts").isPositive();
  }
}
