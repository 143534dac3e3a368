@echo off
rem Runs Castwright on Windows with the Java found in JAVA_HOME or on the path.
setlocal
set "HOME_DIR=%~dp0.."
if defined CASTWRIGHT_JAVA (
  set "JAVA_EXE=%CASTWRIGHT_JAVA%"
) else if defined JAVA_HOME (
  set "JAVA_EXE=%JAVA_HOME%\bin\java.exe"
) else (
  set "JAVA_EXE=java.exe"
)
"%JAVA_EXE%" -version >nul 2>&1
if errorlevel 1 (
  echo castwright: no Java found; install a Java runtime of version 17 or newer. 1>&2
  exit /b 2
)
rem one compiler is the right choice for one short job, both for long ones
rem and for a mold of many pieces not for methods where optimizing takes longer than it saves
set "TIERS=1"
set "DIRECTIVES="
for %%A in (%*) do (
  if "%%~A"=="--pieces" set "TIERS=4"
  if "%%~A"=="--pieces" set DIRECTIVES=-XX:+UnlockDiagnosticVMOptions -XX:-DisplayVMOutput "-XX:CompilerDirectivesFile=%HOME_DIR%\bin\compiler.json"
  if "%%~A"=="serve" set "TIERS=4"
)
"%JAVA_EXE%" -XX:TieredStopAtLevel=%TIERS% -XX:+UseSerialGC -XX:MaxRAMPercentage=60 -Xss8m %DIRECTIVES% -Djava.awt.headless=true %CASTWRIGHT_JAVA_OPTIONS% -cp "%HOME_DIR%\lib\*" org.castwright.cli.Main %*
exit /b %ERRORLEVEL%
