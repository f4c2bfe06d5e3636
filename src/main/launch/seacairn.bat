@echo off
rem Starts Seacairn from the unpacked zip. Java options: SEACAIRN_OPTS.
setlocal
if defined JAVA_HOME (set "java=%JAVA_HOME%\bin\java.exe") else (set "java=java")
"%java%" %SEACAIRN_OPTS% -jar "%~dp0..\seacairn.jar" %*
exit /b %errorlevel%
