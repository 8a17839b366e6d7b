package withers.testing;

import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;
import static org.junit.platform.engine.discovery.DiscoverySelectors.selectMethod;

import java.util.Set;
import java.util.TreeSet;
import org.junit.platform.engine.DiscoverySelector;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.support.descriptor.MethodSource;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/**
 * Runs a contract suite inside a test and tells which of its tests passed and failed, by method.
 */
public final class SuiteRun implements TestExecutionListener {

  private final Set<String> passed = new TreeSet<>();
  private final Set<String> failed = new TreeSet<>();

  private SuiteRun() {}

  /** Runs all tests of a suite. */
  public static SuiteRun of(Class<?> suite) {
    return of(selectClass(suite));
  }

  /** Runs one test of a suite, with these types of parameters. */
  public static SuiteRun of(Class<?> suite, String method, Class<?>... parameters) {
    return of(selectMethod(suite, method, parameters));
  }

  private static SuiteRun of(DiscoverySelector selector) {
    SuiteRun run = new SuiteRun();
    LauncherDiscoveryRequest request =
        LauncherDiscoveryRequestBuilder.request().selectors(selector).build();
    LauncherFactory.create().execute(request, run);
    return run;
  }

  @Override
  public void executionFinished(TestIdentifier test, TestExecutionResult result) {
    if (test.isTest()) {
      String method =
          test.getSource().map(source -> ((MethodSource) source).getMethodName()).orElseThrow();
      boolean success = result.getStatus() == TestExecutionResult.Status.SUCCESSFUL;
      (success ? passed : failed).add(method);
    }
  }

  /** Methods of which at least one run passed. */
  public Set<String> passed() {
    return passed;
  }

  /** Methods of which at least one run failed. */
  public Set<String> failed() {
    return failed;
  }
}
