package withers.kafka;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.kafka.clients.consumer.OffsetOutOfRangeException;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.config.ConfigException;
import org.apache.kafka.common.errors.AuthenticationException;
import org.apache.kafka.common.errors.AuthorizationException;
import org.apache.kafka.common.errors.CorruptRecordException;
import org.apache.kafka.common.errors.DisconnectException;
import org.apache.kafka.common.errors.InterruptException;
import org.apache.kafka.common.errors.InvalidTimestampException;
import org.apache.kafka.common.errors.NotEnoughReplicasException;
import org.apache.kafka.common.errors.RecordTooLargeException;
import org.apache.kafka.common.errors.TimeoutException;
import org.apache.kafka.common.errors.TopicAuthorizationException;
import org.apache.kafka.common.errors.TransactionalIdAuthorizationException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import org.apache.kafka.common.errors.UnsupportedVersionException;

/**
 * Words for what can go wrong with a cluster, each with what to do.
 *
 * @param what what people call what is kept there: "event log"
 * @param unavailable the exception that says that it can't be used now, or by this program
 * @param damaged the exception that says that it is not what was written
 */
public record KafkaTroubles(
    String what,
    KafkaCluster cluster,
    Function<String, RuntimeException> unavailable,
    Function<String, RuntimeException> damaged) {

  /** Work on a client that may fail. */
  @FunctionalInterface
  public interface Work<T> {
    T run() throws ExecutionException, InterruptedException;
  }

  /** Does some work, and explains what Kafka's clients throw. Other exceptions pass. */
  public <T> T trying(Work<T> work) {
    try {
      return work.run();
    } catch (KafkaException e) {
      throw explained(e);
    } catch (ExecutionException e) {
      throw explained(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw explained(e);
    }
  }

  /** That it can't be used, in these words. */
  public RuntimeException unusable(String message) {
    return unavailable.apply(message);
  }

  /** That nothing answered in the time that one waits. */
  public RuntimeException silent() {
    return unavailable.apply(
        "Expected a Kafka broker at %s, but none answered within %d seconds; see that it runs and can be reached, and that log.kafka.bootstrap-servers names it"
            .formatted(cluster.settings().servers(), Math.max(1, cluster.patience().toSeconds())));
  }

  private RuntimeException explained(Exception thrown) {
    Throwable cause = root(thrown);
    RuntimeException explained = explained(cause);
    explained.initCause(thrown);
    return explained;
  }

  // Clients wrap what happened: "failed to construct", "the transaction is in an error state".
  private static Throwable root(Throwable thrown) {
    Throwable cause = thrown.getCause();
    boolean wrapped =
        thrown instanceof ExecutionException || thrown.getClass().equals(KafkaException.class);
    return cause != null && wrapped ? root(cause) : thrown;
  }

  private RuntimeException explained(Throwable cause) {
    if (cause instanceof TimeoutException || cause instanceof DisconnectException) {
      return cause.getCause() instanceof NotEnoughReplicasException ? replicas() : silent();
    } else if (cause instanceof ConfigException) {
      return unreachable(cause);
    } else if (cause instanceof AuthenticationException) {
      return signIn();
    } else if (cause instanceof AuthorizationException denied) {
      return denied(denied);
    } else if (cause instanceof NotEnoughReplicasException) {
      return replicas();
    } else {
      return explainedByTopic(cause);
    }
  }

  private RuntimeException explainedByTopic(Throwable cause) {
    if (cause instanceof RecordTooLargeException) {
      return unavailable.apply(
          "A record of the %s is larger than the broker takes; raise max.message.bytes of the topics %s.*, then repeat"
              .formatted(what, cluster.settings().topicPrefix()));
    } else if (cause instanceof UnknownTopicOrPartitionException) {
      return unavailable.apply(
          "Expected the topics %s.* of the %s, but one is missing; restore it, or choose another log.kafka.topic-prefix"
              .formatted(cluster.settings().topicPrefix(), what));
    } else if (cause instanceof CorruptRecordException
        || cause instanceof OffsetOutOfRangeException) {
      return damaged.apply(
          "The %s on Kafka at %s is damaged: records are changed or gone; restore it from a replica or a copy"
              .formatted(what, cluster.settings().servers()));
    } else if (cause instanceof InvalidTimestampException) {
      return unavailable.apply(
          "The clocks of this machine and of the Kafka broker at %s are too far apart for the %s; set both right, then repeat"
              .formatted(cluster.settings().servers(), what));
    } else if (cause instanceof UnsupportedVersionException) {
      return unavailable.apply(
          "The Kafka broker at %s is too old; 3.7 is the oldest that the %s was written for"
              .formatted(cluster.settings().servers(), what));
    } else if (cause instanceof InterruptException || cause instanceof InterruptedException) {
      return unavailable.apply("Waiting for the %s on Kafka was interrupted".formatted(what));
    } else {
      return unavailable.apply(
          "The %s on Kafka at %s can't be read or written (%s); repeat, and look into the broker's log"
              .formatted(what, cluster.settings().servers(), cause.getClass().getSimpleName()));
    }
  }

  private RuntimeException unreachable(Throwable cause) {
    boolean names = String.valueOf(cause.getMessage()).contains("bootstrap");
    return unavailable.apply(
        names
            ? "Expected the addresses of Kafka brokers, but %s is known to nobody; correct log.kafka.bootstrap-servers"
                .formatted(cluster.settings().servers())
            : "Kafka's client can't be set up for %s; look at security, certificates and client-certificate under log.kafka"
                .formatted(cluster.settings().servers()));
  }

  private RuntimeException signIn() {
    return unavailable.apply(
        "The Kafka broker at %s refused %s; look at user, password-file, mechanism, security, certificates and client-certificate under log.kafka"
            .formatted(cluster.settings().servers(), user()));
  }

  private RuntimeException denied(AuthorizationException denied) {
    return unavailable.apply(
        "The Kafka broker at %s doesn't allow %s to use %s; the rights that each role needs stand in docs/kafka.md"
            .formatted(cluster.settings().servers(), user(), whatIsDenied(denied)));
  }

  private String whatIsDenied(AuthorizationException denied) {
    if (denied instanceof TopicAuthorizationException topics) {
      return topics(topics.unauthorizedTopics());
    } else if (denied instanceof TransactionalIdAuthorizationException) {
      return "the transactional id of the prefix " + cluster.settings().topicPrefix();
    }
    return "the " + what;
  }

  private String topics(Set<String> unauthorized) {
    String some = unauthorized.stream().sorted().limit(3).collect(Collectors.joining(", "));
    return unauthorized.isEmpty() || unauthorized.size() > 3
        ? "the topics %s.*".formatted(cluster.settings().topicPrefix())
        : "the topic " + some;
  }

  private String user() {
    Optional<String> name = cluster.settings().login().map(KafkaSettings.Login::user);
    return name.map("the user "::concat).orElse("this program");
  }

  private RuntimeException replicas() {
    return unavailable.apply(
        "Kafka at %s has too few replicas in step to keep the %s safely; repeat when all brokers are up"
            .formatted(cluster.settings().servers(), what));
  }
}
