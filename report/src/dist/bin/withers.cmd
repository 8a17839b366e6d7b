@echo off
rem Starts the installed Withers with the Java of this computer, 17 or newer: JAVA_HOME, else the PATH.
rem WITHERS_JAVA_OPTS holds options for the JVM, for example -Xmx4g.
setlocal
if not defined WITHERS_JAVA_OPTS set "WITHERS_JAVA_OPTS=-XX:+UseParallelGC -XX:NewRatio=4 -XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
set "WITHERS_AT=%~dp0.."
set "WITHERS_JAVA=java"
if defined JAVA_HOME set "WITHERS_JAVA=%JAVA_HOME%\bin\java.exe"
"%WITHERS_JAVA%" -Dfile.encoding=UTF-8 -Dstdout.encoding=UTF-8 -Dstderr.encoding=UTF-8 "-Dwithers.home=%WITHERS_AT%" "-Dwithers.command=%~0" %WITHERS_JAVA_OPTS% -cp "%WITHERS_AT%\app\withers.jar" withers.report.Main %*
if %ERRORLEVEL% equ 9009 (
  echo withers: Expected Java 17 or newer, but found none. Install one, or set JAVA_HOME to it. 1>&2
  exit /b 90
)
exit /b %ERRORLEVEL%
