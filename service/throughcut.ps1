# Windows: one workshop, started when this user logs in. See docs/operation.md.
#   powershell -ExecutionPolicy Bypass -File service\throughcut.ps1 [-Lan] [-Remove]
param([switch]$Lan, [switch]$Remove)

$ErrorActionPreference = 'Stop'
$name = 'Throughcut'
if ($Remove) {
  Unregister-ScheduledTask -TaskName $name -Confirm:$false
  exit 0
}

$folder = Split-Path -Parent $PSScriptRoot
$node = (Get-Command node).Source
$words = 'build\src\cli\main.js serve'
if ($Lan) { $words = "$words --lan" }

# What is set for this user (setx THROUGHCUT_BACKUP ...) reaches the program.
$action = New-ScheduledTaskAction -Execute $node -Argument $words -WorkingDirectory $folder
$trigger = New-ScheduledTaskTrigger -AtLogOn -User "$env:USERDOMAIN\$env:USERNAME"
# No limit of time; started anew a minute after it ended by itself.
$settings = New-ScheduledTaskSettingsSet -AllowStartIfOnBatteries -DontStopIfGoingOnBatteries `
  -ExecutionTimeLimit ([TimeSpan]::Zero) -RestartCount 999 -RestartInterval (New-TimeSpan -Minutes 1) `
  -MultipleInstances IgnoreNew
Register-ScheduledTask -TaskName $name -Action $action -Trigger $trigger -Settings $settings -Force | Out-Null
Start-ScheduledTask -TaskName $name
Write-Output "Throughcut starts when you log in. It is at http://127.0.0.1:4870"
