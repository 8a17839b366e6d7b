package withers.kafka;

import com.github.dockerjava.api.exception.NotFoundException;
import java.util.Optional;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.testcontainers.DockerClientFactory;

/**
 * Tests in a container run where an engine does and has the image, are skipped elsewhere and say
 * why, and fail instead when the environment says that they must run.
 */
public final class ContainerEngine implements ExecutionCondition {
  private static final String REQUIRED = "WITHERS_CONTAINER_REQUIRED";
  private static final String IMAGE = "WITHERS_KAFKA_IMAGE";
  private static final String PUBLIC_IMAGE = "apache/kafka:4.3.1";

  /** The image that holds the broker: what {@value #IMAGE} names, or the public one. */
  public static String image() {
    return Optional.ofNullable(System.getenv(IMAGE)).orElse(PUBLIC_IMAGE);
  }

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    Optional<String> lacking = lacking();
    if (lacking.isEmpty()) {
      return ConditionEvaluationResult.enabled("an engine has the image");
    }
    if (System.getenv(REQUIRED) != null) {
      throw new IllegalStateException(REQUIRED + " is set, but " + lacking.get());
    }
    return ConditionEvaluationResult.disabled(lacking.get());
  }

  private static Optional<String> lacking() {
    if (!DockerClientFactory.instance().isDockerAvailable()) {
      return Optional.of("no container engine was found (DEVELOPERS.md, \"A container\")");
    }
    return hasImage()
        ? Optional.empty()
        : Optional.of(
            "the engine lacks the image %s: pull it, or name another with %s"
                .formatted(image(), IMAGE));
  }

  private static boolean hasImage() {
    try {
      DockerClientFactory.lazyClient().inspectImageCmd(image()).exec();
      return true;
    } catch (NotFoundException missing) {
      return false;
    }
  }
}
