package withers.report.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OneBehindTest {

  @Test
  void results_come_in_the_order_of_the_work_of_which_no_two_are_under_way() throws IOException {
    AtomicInteger underWay = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    try (OneBehind<Integer> behind = new OneBehind<>()) {
      for (int i = 0; i < 100; i++) {
        int number = i;
        behind.handOver(
            () -> {
              most.accumulateAndGet(underWay.incrementAndGet(), Math::max);
              underWay.decrementAndGet();
              return number;
            });
      }

      assertThat(behind.results()).hasSize(100).isSorted();
    }
    assertThat(most).hasValue(1);
  }

  @Test
  void work_goes_on_while_the_next_is_made_ready() throws IOException {
    CountDownLatch isReady = new CountDownLatch(1);
    try (OneBehind<String> behind = new OneBehind<>()) {
      behind.handOver(
          () -> {
            isReady.await();
            return "done";
          });
      isReady.countDown(); // who waited for the work before would never come here

      assertThat(behind.results()).containsExactly("done");
    }
  }

  @Test
  void a_failure_is_thrown_as_it_was_and_nothing_begins_after_it() {
    AtomicBoolean hasBegun = new AtomicBoolean();
    IOException full = new IOException("no space left");
    try (OneBehind<String> behind = new OneBehind<>()) {
      assertThatThrownBy(
              () -> {
                behind.handOver(
                    () -> {
                      throw full;
                    });
                behind.handOver(
                    () -> {
                      hasBegun.set(true);
                      return "";
                    });
              })
          .isSameAs(full);
    }
    assertThat(hasBegun).isFalse();
  }

  @Test
  void closing_waits_for_what_is_under_way() throws IOException {
    CountDownLatch isClosing = new CountDownLatch(1);
    AtomicBoolean isDone = new AtomicBoolean();
    try (OneBehind<String> behind = new OneBehind<>()) {
      behind.handOver(
          () -> {
            isClosing.await();
            isDone.set(true);
            return "";
          });
      isClosing.countDown();
    }
    assertThat(isDone).isTrue();
  }
}
