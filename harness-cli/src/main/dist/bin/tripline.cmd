@echo off
rem Starts Tripline with the Java runtime of this machine, 17 or newer. Not yet tried on Windows.
rem 70: no verdict was reached. Never 1, which would say "rejected".
setlocal DisableDelayedExpansion
set "TL_HOME=%~dp0.."
set "TL_JAVA=java.exe"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "TL_JAVA=%JAVA_HOME%\bin\java.exe"
set "TL_MAJOR="
for /f "tokens=3" %%v in ('call "%TL_JAVA%" -version 2^>^&1 ^| findstr /c:" version "') do if not defined TL_MAJOR set "TL_MAJOR=%%~v"
for /f "delims=.-+" %%v in ("%TL_MAJOR%") do set "TL_MAJOR=%%v"
set /a TL_NUMBER=TL_MAJOR 2>nul
if not defined TL_NUMBER set TL_NUMBER=0
if %TL_NUMBER% LSS 17 (
  echo tripline: needs a Java runtime, 17 or newer: install one or set JAVA_HOME to it 1>&2
  exit /b 70
)
set "TL_JAR="
for %%j in ("%TL_HOME%\lib\tripline-harness-*.jar") do set "TL_JAR=%%~fj"
if not defined TL_JAR (
  echo tripline: incomplete: nothing in "%TL_HOME%\lib" 1>&2
  exit /b 70
)
rem Only what may take digests of large files takes the second compiler, for what runs a hundred thousand times.
set "TL_COMPILERS=-XX:TieredStopAtLevel=1 -Xms12m -Xmn4m"
for %%c in (check accept seal verify-seal) do if "%~1"=="%%c" set "TL_COMPILERS=-Xms8m -Xmn2m -XX:+IgnoreUnrecognizedVMOptions -XX:Tier4InvocationThreshold=500000 -XX:Tier4MinInvocationThreshold=60000 -XX:Tier4CompileThreshold=1500000 -XX:Tier4BackEdgeThreshold=4000000 -XX:-ProfileInterpreter -XX:-C1UpdateMethodData -XX:-C1ProfileBranches -XX:-C1ProfileCalls -XX:-C1ProfileVirtualCalls -XX:-C1ProfileInlinedCalls -XX:-C1ProfileCheckcasts -XX:CompileCommand=quiet -XX:CompileCommand=CompileThresholdScaling,sun.security.provider.SHA2::implCompress,0.01"
"%TL_JAVA%" %TL_COMPILERS% -XX:+UseSerialGC -XX:-UsePerfData -XX:MinHeapFreeRatio=5 -XX:MaxHeapFreeRatio=20 -DjSerialComm.library.path="%TL_HOME%\lib\native" -jar "%TL_JAR%" %*
exit /b %ERRORLEVEL%
