package withers.workspace;

/** Another command is writing to the workspace. Nothing was changed. */
public final class WorkspaceBusyException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  WorkspaceBusyException(String workspace, String holder) {
    super(
        "Expected a free workspace, but found it in use by %s (%s): wait for it to end, then repeat"
            .formatted(holder, workspace));
  }
}
