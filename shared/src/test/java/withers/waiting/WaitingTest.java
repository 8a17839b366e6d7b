package withers.waiting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WaitingTest {

  private static final Waiting WAITING = new Waiting("It was interrupted", "It failed");

  private static Future<String> failed(Throwable thrown) {
    return CompletableFuture.failedFuture(thrown);
  }

  @Test
  void tells_what_came_of_the_work() {
    assertThat(WAITING.on(CompletableFuture.supplyAsync(() -> "done"))).isEqualTo("done");
  }

  @Test
  void throws_what_the_work_threw_as_it_is() {
    RuntimeException thrown = new IllegalArgumentException("Expected one, but found two");

    assertThatThrownBy(() -> WAITING.on(failed(thrown))).isSameAs(thrown);
  }

  @ParameterizedTest
  @MethodSource("others")
  void says_that_it_failed_of_what_can_t_be_thrown_on(Throwable thrown) {
    assertThatThrownBy(() -> WAITING.on(failed(thrown)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("It failed")
        .cause()
        .isSameAs(thrown);
  }

  private static Throwable[] others() {
    return new Throwable[] {new IOException("no room"), new StackOverflowError("too deep")};
  }

  @Test
  void interrupted_says_so_and_stays_interrupted() {
    Thread.currentThread().interrupt();

    assertThatThrownBy(() -> WAITING.on(new CompletableFuture<>()))
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("It was interrupted")
        .hasCauseInstanceOf(InterruptedException.class);
    assertThat(Thread.interrupted()).isTrue();
  }
}
